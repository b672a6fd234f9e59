import type { ReactNode } from 'react';
import { classNames } from './class-names';
import styles from './figure.module.css';
import { Working, type WorkingView } from './working';

/**
 * One large figure with its label, and what it rests on.
 *
 * @param value   already written for people (`97.4`, `3 of 4`); `null` is shown as "not established"
 * @param unit    set small after the figure: `mm`, `%`, `trays`
 * @param status  a `Status` under the figure, when the figure is good or bad
 * @param note    one short line under it
 * @param working opens the working beneath
 * @param size    `large` (default) or `medium` for rows of several
 */
export function Figure({
  label,
  value,
  unit,
  status,
  note,
  working,
  size = 'large',
}: {
  label: ReactNode;
  value: string | number | null;
  unit?: string;
  status?: ReactNode;
  note?: ReactNode;
  working?: WorkingView;
  size?: 'large' | 'medium';
}) {
  return (
    <div className={classNames(styles.figure, styles[size])}>
      <p className={styles.label}>{label}</p>
      <p className={styles.value}>
        {value === null ? (
          <span className={styles.unknown}>not established</span>
        ) : (
          <>
            <span className={styles.number}>{value}</span>
            {unit ? <span className={styles.unit}> {unit}</span> : null}
          </>
        )}
      </p>
      {status ? <div>{status}</div> : null}
      {note ? <p className={styles.note}>{note}</p> : null}
      {working ? <Working working={working} /> : null}
    </div>
  );
}

/** Figures side by side, divided by hairlines, as in the title block of a drawing. */
export function FigureRow({ children }: { children: ReactNode }) {
  return <div className={styles.row}>{children}</div>;
}
