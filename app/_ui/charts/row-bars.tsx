'use client';

import { barShares } from './bar-layout';
import styles from './charts.module.css';

/** A thing with its figure, its bar, and what is said beside it. */
export interface RowBar {
  id: string;
  label: string;
  href?: string;
  /** `null`: not known. */
  value: number | null;
  shown: string;
  note?: string;
}

/**
 * Lying bars for things with names: a list that reads without its bars, which only show it. A client component for the reason
 * given in `glyph.tsx`.
 */
export function RowBars({ label, rows }: { label: string; rows: readonly RowBar[] }) {
  const shares = barShares(rows.map(({ value }) => value));
  return (
    <ul className={styles.rows} aria-label={label}>
      {rows.map(({ id, label: name, href, shown, note }, at) => {
        const share = shares[at] ?? null;
        return (
          <li key={id}>
            <span className={styles.name}>{href ? <a href={href}>{name}</a> : name}</span>
            <svg viewBox="0 0 200 14" preserveAspectRatio="none" className={styles.lying} aria-hidden="true">
              <line className={styles.axis} x1="0.5" x2="0.5" y1="0" y2="14" />
              {share === null ? null : (
                <rect
                  className={styles.solidBar}
                  x="0"
                  y="2"
                  width={Math.round(share * 2000) / 10}
                  height="10"
                />
              )}
            </svg>
            <span className={styles.shown}>{shown}</span>
            {note ? <span className={styles.note}>{note}</span> : null}
          </li>
        );
      })}
    </ul>
  );
}
