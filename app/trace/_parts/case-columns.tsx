'use client';

import type { Column } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import { CASES_A_PAGE, STANDING_ORDER } from '@/lib/trace/casePage';
import type { Standing } from '@/lib/trace/slotBounds';
import { traceWords } from '@/lib/wording/trace';
import styles from '../trace.module.css';

export interface ReachedCaseRow {
  id: string;
  reference: string;
  date: string;
  surgeon: string | null;
  /** `null`: not shown, as the reader counts a set that went to it. */
  lo: number | null;
  hi: number | null;
  standing: Standing;
  reasons: string[];
}

const TONES: Record<Standing, Tone> = { confirmed: 'stop', possible: 'attention', excluded: 'good' };

const columns: Column<ReachedCaseRow>[] = [
  { id: 'reference', header: 'Case', value: (row) => row.reference, width: 'fit' },
  { id: 'date', header: 'Date', value: (row) => row.date, width: 'fit' },
  { id: 'surgeon', header: 'Surgeon', value: (row) => row.surgeon, width: 'fit' },
  {
    id: 'standing',
    header: 'Stands',
    value: (row) => `${STANDING_ORDER[row.standing]} ${String(9_999 - (row.hi ?? 0)).padStart(4, '0')}`,
    width: 'fit',
    cell: (row) => (
      <Status tone={TONES[row.standing]} look={row.standing === 'excluded' ? 'plain' : 'tag'}>
        {traceWords.standingSeen(row)}
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
];

/** How a table of such cases looks, whoever puts them in order. */
export const AS_CASES = {
  hideCaption: true,
  columns,
  rowKey: (row: ReachedCaseRow) => row.id,
  rowHref: (row: ReachedCaseRow) => `/trace/result?of=case&case=${row.id}`,
  urlKey: 'cases',
  pageSize: CASES_A_PAGE,
  empty: 'No case on record had any of it.',
} as const;
