'use client';

import { useMemo } from 'react';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import type { Standing } from '@/lib/trace/slotBounds';
import { traceWords } from '@/lib/wording/trace';
import styles from '../trace.module.css';

export interface ReachedCaseRow {
  id: string;
  reference: string;
  date: string;
  surgeon: string | null;
  lo: number;
  hi: number;
  standing: Standing;
  reasons: string[];
}

const TONES: Record<Standing, Tone> = { confirmed: 'stop', possible: 'attention', excluded: 'good' };
const ORDER: Record<Standing, number> = { confirmed: 0, possible: 1, excluded: 2 };

/** The cases a trace reaches: confirmed first, then possible, then excluded; the newest of each first. */
export function ReachedCases({ caption, rows }: { caption: string; rows: readonly ReachedCaseRow[] }) {
  const columns = useMemo<Column<ReachedCaseRow>[]>(
    () => [
      { id: 'reference', header: 'Case', value: (row) => row.reference, width: 'fit' },
      { id: 'date', header: 'Date', value: (row) => row.date, width: 'fit' },
      { id: 'surgeon', header: 'Surgeon', value: (row) => row.surgeon, width: 'fit' },
      {
        id: 'standing',
        header: 'Stands',
        value: (row) => `${ORDER[row.standing]} ${String(9_999 - row.hi).padStart(4, '0')}`,
        width: 'fit',
        cell: (row) => (
          <Status tone={TONES[row.standing]} look={row.standing === 'excluded' ? 'plain' : 'tag'}>
            {traceWords.standing(row)}
          </Status>
        ),
      },
      {
        id: 'why',
        header: 'Why',
        sortable: false,
        value: (row) => row.reasons.join(' '),
        cell: (row) => (
          <ul className={styles.reasons}>
            {[...new Set(row.reasons)].map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        ),
      },
    ],
    [],
  );
  const sorted = useMemo(
    () => [...rows].sort((a, b) => ORDER[a.standing] - ORDER[b.standing] || b.date.localeCompare(a.date)),
    [rows],
  );
  return (
    <DataTable
      caption={caption}
      hideCaption
      columns={columns}
      rows={sorted}
      rowKey={(row) => row.id}
      rowHref={(row) => `/trace/result?of=case&case=${row.id}`}
      urlKey="cases"
      pageSize={50}
      empty="No case on record had any of it."
    />
  );
}
