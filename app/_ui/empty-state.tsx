import type { ReactNode } from 'react';
import styles from './empty-state.module.css';

/** Nothing here, why that is, and what to do about it. `title` is a plain statement ("No cases tomorrow"). */
export function EmptyState({
  title,
  children,
  action,
}: {
  title: string;
  children?: ReactNode;
  action?: ReactNode;
}) {
  return (
    <div className={styles.state}>
      <p className={styles.title}>{title}</p>
      {children ? <div className={styles.text}>{children}</div> : null}
      {action ? <div className={styles.action}>{action}</div> : null}
    </div>
  );
}
