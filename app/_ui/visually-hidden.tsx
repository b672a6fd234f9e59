import type { ReactNode } from 'react';
import styles from './visually-hidden.module.css';

/** Text for screen readers only. */
export function VisuallyHidden({
  children,
  as: Tag = 'span',
}: {
  children: ReactNode;
  as?: 'span' | 'div' | 'h2' | 'h3';
}) {
  return <Tag className={styles.hidden}>{children}</Tag>;
}
