import type { ReactNode } from 'react';
import styles from './field-grid.module.css';

/** Fields in as many columns as fit, tops aligned. `min` is the narrowest a column may be. */
export function FieldGrid({
  children,
  min = 'medium',
}: {
  children: ReactNode;
  min?: 'narrow' | 'medium' | 'wide';
}) {
  return (
    <div className={styles.grid} data-min={min}>
      {children}
    </div>
  );
}

/** Takes the whole row of a `FieldGrid`. */
export function FieldGridRow({ children }: { children: ReactNode }) {
  return <div className={styles.whole}>{children}</div>;
}
