import type { ReactNode } from 'react';
import styles from './button-row.module.css';

/** Buttons and links side by side, wrapping, evenly spaced. Not printed. */
export function ButtonRow({ children, end = false }: { children: ReactNode; end?: boolean }) {
  return (
    <div className={styles.row} data-end={end || undefined} data-print="no">
      {children}
    </div>
  );
}
