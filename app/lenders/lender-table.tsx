'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import { lateWords, shareWords } from '@/lib/wording/loans';

export interface LenderRow {
  id: string;
  name: string;
  contact: string | null;
  phone: string | null;
  inUse: boolean;
  loans: number;
  n: number;
  onTime: number;
  medianLateMinutes: number | null;
  worstLateMinutes: number | null;
  overdue: number;
  processed: number;
  unused: number;
}

const late = (minutes: number | null) =>
  minutes === null ? null : minutes === 0 ? 'not late' : lateWords(minutes);

const columns: Column<LenderRow>[] = [
  { id: 'name', header: 'Lender', value: (row) => row.name, width: 'name' },
  { id: 'contact', header: 'Contact', value: (row) => row.contact },
  { id: 'phone', header: 'Telephone', value: (row) => row.phone, width: 'fit' },
  { id: 'loans', header: 'Loans', value: (row) => row.loans, align: 'end', width: 'fit' },
  {
    id: 'punctual',
    header: 'Came in time',
    value: (row) => (row.n === 0 ? null : row.onTime / row.n),
    cell: (row) => (row.n === 0 ? null : shareWords(row.onTime, row.n)),
  },
  {
    id: 'median',
    header: 'Half of them by',
    value: (row) => row.medianLateMinutes,
    cell: (row) => late(row.medianLateMinutes),
  },
  {
    id: 'worst',
    header: 'Latest',
    value: (row) => row.worstLateMinutes,
    cell: (row) => late(row.worstLateMinutes),
  },
  {
    id: 'overdue',
    header: 'Due and not here',
    value: (row) => row.overdue,
    align: 'end',
    width: 'fit',
  },
  {
    id: 'unused',
    header: 'Processed, not used',
    value: (row) => (row.processed === 0 ? null : row.unused / row.processed),
    cell: (row) => (row.processed === 0 ? null : shareWords(row.unused, row.processed)),
  },
  {
    id: 'use',
    header: 'Use',
    value: (row) => (row.inUse ? 'in use' : 'out of use'),
    cell: (row) => (
      <Status tone={row.inUse ? 'good' : 'neutral'} look="plain">
        {row.inUse ? 'in use' : 'out of use'}
      </Status>
    ),
    width: 'fit',
  },
];

/** Lenders with their figures. */
export function LenderTable({ rows }: { rows: readonly LenderRow[] }) {
  return (
    <DataTable
      caption="Lenders"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={(row) => row.id}
      rowHref={(row) => `/lenders/${row.id}`}
      urlKey="lenders"
      sort="name"
      empty="No lender is entered yet."
    />
  );
}
