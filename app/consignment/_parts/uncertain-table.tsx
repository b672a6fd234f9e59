'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { UsageOrderOnRecord } from '@/db/queries/consignment/usageOrders';
import { shareWords, USAGE_OUTCOME_WORDS } from '@/lib/wording/consignment';

type Row = UsageOrderOnRecord['uncertain'][number];

const COLUMNS: Column<Row>[] = [
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'code' },
  { id: 'name', header: 'Name', value: (row) => row.name, width: 'wide' },
  { id: 'set', header: 'Set', value: (row) => row.set, width: 'fit' },
  { id: 'outcome', header: 'Outcome', value: (row) => USAGE_OUTCOME_WORDS[row.outcome], width: 'fit' },
  {
    id: 'case',
    header: 'Case',
    value: (row) => row.reference ?? '',
    cell: (row) => row.reference ?? 'no case',
    width: 'fit',
  },
  {
    id: 'share',
    header: 'Theirs',
    value: (row) => row.hi,
    cell: (row) => (
      <Status tone="unknown" look="plain">
        {shareWords(row.lo, row.hi, row.pieces)}
      </Status>
    ),
    width: 'fit',
  },
];

/** Pieces out of slots that may have been the owner’s: shown, and charged to nobody. */
export function UncertainTable({ rows }: { rows: Row[] }) {
  return (
    <DataTable
      caption="What may have been theirs"
      hideCaption
      columns={COLUMNS}
      rows={rows}
      rowKey={(row) => `${row.set} ${row.code} ${row.outcome} ${row.reference ?? ''}`}
      urlKey="uncertain"
      empty="Of nothing is it uncertain whose it was."
    />
  );
}
