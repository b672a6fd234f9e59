import type { ReactNode } from 'react';
import styles from './empty-state.module.css';
import { Glyph } from './glyph';

/** Something failed: what, what that means for the work in hand, and the way out. Announced when it appears. */
export function ErrorState({
  title,
  children,
  action,
}: {
  title: string;
  children?: ReactNode;
  action?: ReactNode;
}) {
  return (
    <div className={`${styles.state} ${styles.error}`} role="alert">
      <p className={styles.title}>
        <Glyph tone="stop" /> {title}
      </p>
      {children ? <div className={styles.text}>{children}</div> : null}
      {action ? <div className={styles.action}>{action}</div> : null}
    </div>
  );
}
