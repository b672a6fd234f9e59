import type { ReactNode } from 'react';
import { useId } from 'react';
import { classNames } from './class-names';
import styles from './section.module.css';

/**
 * A titled part of a page.
 *
 * @param look  `open` (default: hairline above, on the paper) or `sheet` (a sheet of its own, with an edge)
 * @param level heading level, 2 or 3
 * @param note  a short remark beside the heading: a count, a date
 */
export function Section({
  title,
  note,
  actions,
  level = 2,
  look = 'open',
  id,
  children,
}: {
  title: ReactNode;
  note?: ReactNode;
  actions?: ReactNode;
  level?: 2 | 3;
  look?: 'open' | 'sheet';
  id?: string;
  children: ReactNode;
}) {
  const headingId = useId();
  const Heading = level === 2 ? 'h2' : 'h3';
  return (
    <section aria-labelledby={headingId} id={id} className={classNames(styles.section, styles[look])}>
      <div className={styles.head}>
        <Heading id={headingId}>{title}</Heading>
        {note ? <span className={styles.note}>{note}</span> : null}
        {actions ? (
          <div className={styles.actions} data-print="no">
            {actions}
          </div>
        ) : null}
      </div>
      <div className={styles.body}>{children}</div>
    </section>
  );
}
