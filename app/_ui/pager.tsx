'use client';

import { Button } from './button';
import styles from './pager.module.css';

/** Moves through the pages of a long list. `pageIndex` counts from 0. */
export function Pager({
  label,
  pageIndex,
  pageSize,
  total,
  onPage,
}: {
  label: string;
  pageIndex: number;
  pageSize: number;
  total: number;
  onPage: (index: number) => void;
}) {
  const first = pageIndex * pageSize + 1;
  const last = Math.min(total, first + pageSize - 1);
  const atStart = pageIndex === 0;
  const atEnd = last >= total;
  return (
    <nav aria-label={`Pages of ${label}`} className={styles.pager} data-print="no">
      <Button onClick={() => onPage(pageIndex - 1)} disabled={atStart}>
        Previous
      </Button>
      <p role="status">
        {first}–{last} of {total}
      </p>
      <Button onClick={() => onPage(pageIndex + 1)} disabled={atEnd}>
        Next
      </Button>
    </nav>
  );
}
