import type { ReactNode } from 'react';
import styles from './filter-bar.module.css';

/**
 * Search and filter fields in one ruled row, with what they leave.
 *
 * @param summary how many are shown of how many; announced politely when it changes
 * @param reset   a quiet button or link that clears the filters
 * @param action  set to make it a plain GET form that works without scripts
 */
export function FilterBar({
  label = 'Filter',
  summary,
  reset,
  action,
  children,
}: {
  label?: string;
  summary?: ReactNode;
  reset?: ReactNode;
  action?: string;
  children: ReactNode;
}) {
  const inside = (
    <>
      <div className={styles.fields}>{children}</div>
      <div className={styles.foot}>
        {summary === undefined ? null : (
          <p role="status" className={styles.summary}>
            {summary}
          </p>
        )}
        {reset}
      </div>
    </>
  );
  return action === undefined ? (
    <search className={styles.bar} aria-label={label} data-print="no">
      {inside}
    </search>
  ) : (
    <search className={styles.bar} aria-label={label} data-print="no">
      <form action={action} method="get" className={styles.form}>
        {inside}
      </form>
    </search>
  );
}
