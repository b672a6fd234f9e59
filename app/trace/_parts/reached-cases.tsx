'use client';

import { useMemo } from 'react';
import { DataTable } from '@/app/_ui/data-table';
import { STANDING_ORDER } from '@/lib/trace/casePage';
import { AS_CASES, type ReachedCaseRow } from './case-columns';

/** The cases a trace reaches: confirmed first, then possible, then excluded; the newest of each first. */
export function ReachedCases({ caption, rows }: { caption: string; rows: readonly ReachedCaseRow[] }) {
  const sorted = useMemo(
    () =>
      [...rows].sort(
        (a, b) => STANDING_ORDER[a.standing] - STANDING_ORDER[b.standing] || b.date.localeCompare(a.date),
      ),
    [rows],
  );
  return <DataTable {...AS_CASES} caption={caption} rows={sorted} />;
}
