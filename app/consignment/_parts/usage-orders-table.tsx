'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { UsageOrderState } from '@/lib/consignment/state';
import { USAGE_ORDER_STATE_WORDS } from '@/lib/wording/consignment';
import { USAGE_ORDER_TONES } from './state-tones';

interface Row {
  id: string;
  number: string;
  owner: string;
  state: UsageOrderState;
  made: string;
  madeBy: string;
  sent: string | null;
  lines: number;
  pieces: number;
  toReplace: number;
}

const COLUMNS: Column<Row>[] = [
  { id: 'number', header: 'Usage order', value: (row) => row.number, width: 'code' },
  { id: 'owner', header: 'Owner', value: (row) => row.owner, width: 'wide' },
  {
    id: 'stands',
    header: 'Stands',
    value: (row) => USAGE_ORDER_STATE_WORDS[row.state],
    cell: (row) => (
      <Status tone={USAGE_ORDER_TONES[row.state]} look="plain">
        {USAGE_ORDER_STATE_WORDS[row.state]}
      </Status>
    ),
    width: 'fit',
  },
  { id: 'pieces', header: 'Pieces used', align: 'end', value: (row) => row.pieces, width: 'fit' },
  { id: 'replace', header: 'To replace', align: 'end', value: (row) => row.toReplace, width: 'fit' },
  { id: 'lines', header: 'Lines', align: 'end', value: (row) => row.lines, width: 'fit' },
  { id: 'made', header: 'Made', value: (row) => row.number, cell: (row) => row.made, width: 'fit' },
  { id: 'by', header: 'By', value: (row) => row.madeBy },
  {
    id: 'sent',
    header: 'Sent',
    value: (row) => row.sent ?? '',
    cell: (row) => row.sent ?? 'not sent',
    width: 'fit',
    sortable: false,
  },
];

/** Usage orders, the newest first. */
export function UsageOrdersTable({ rows }: { rows: Row[] }) {
  return (
    <DataTable
      caption="Usage orders"
      hideCaption
      columns={COLUMNS}
      rows={rows}
      rowKey={(row) => row.id}
      rowHref={(row) => `/consignment/orders/${row.id}`}
      rowTone={(row) => (row.state === 'made' || row.state === 'approved' ? 'attention' : null)}
      urlKey="usage-orders"
      sort="-number"
      empty="No usage order was made yet."
    />
  );
}
