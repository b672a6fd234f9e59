'use client';

import type { ReactNode } from 'react';
import { classNames } from './class-names';
import styles from './disclosure.module.css';

/**
 * Something folded away. Native, so it opens without scripts and find-in-page reaches into it. A client component for the reason given
 * in `glyph.tsx`.
 *
 * @param plain without its rules, inside a row that has its own
 */
export function Disclosure({
  summary,
  open = false,
  plain = false,
  children,
}: {
  summary: ReactNode;
  open?: boolean;
  plain?: boolean;
  children: ReactNode;
}) {
  return (
    <details className={classNames(styles.disclosure, plain && styles.plain)} open={open}>
      <summary>
        <svg
          className={styles.marker}
          viewBox="0 0 12 12"
          width="12"
          height="12"
          aria-hidden="true"
          focusable="false"
        >
          <path d="M1 6h10" stroke="currentColor" strokeWidth="1.75" />
          <path className={styles.upright} d="M6 1v10" stroke="currentColor" strokeWidth="1.75" />
        </svg>
        {summary}
      </summary>
      <div className={styles.body}>{children}</div>
    </details>
  );
}
