'use client';

import styles from './app-shell.module.css';

/**
 * A plain straight plate with three holes, in the drawings' own line. A client component so that it is sent as one: the
 * frame is streamed in rows, and a row that ends within a drawing would have it put together in the browser.
 */
export function Mark() {
  return (
    <svg
      viewBox="0 0 44 18"
      width="44"
      height="18"
      aria-hidden="true"
      focusable="false"
      className={styles.mark}
    >
      <rect x="1" y="2" width="42" height="14" rx="7" fill="none" stroke="currentColor" strokeWidth="1.75" />
      <circle cx="10" cy="9" r="3.25" fill="none" stroke="currentColor" strokeWidth="1.75" />
      <circle cx="22" cy="9" r="3.25" fill="currentColor" stroke="currentColor" strokeWidth="1.75" />
      <circle cx="34" cy="9" r="3.25" fill="none" stroke="currentColor" strokeWidth="1.75" />
    </svg>
  );
}
