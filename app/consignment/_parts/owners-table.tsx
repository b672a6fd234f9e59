'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import { consignmentScreens as words } from '@/lib/wording/consignment';

interface Row {
  id: string;
  name: string;
  onShelf: number;
  withCases: number;
  lines: number;
  pieces: number;
  uncertain: number;
  open: { number: string } | null;
  lastSent: string | null;
}

const COLUMNS: Column<Row>[] = [
  { id: 'name', header: 'Owner', value: (row) => row.name, width: 'name' },
  {
    id: 'waits',
    header: 'Waits for a usage order',
    value: (row) => row.pieces,
    cell: (row) => (
      <Status tone={row.lines > 0 ? 'attention' : 'good'} look="plain">
        {words.waits(row.pieces, row.lines)}
      </Status>
    ),
  },
  {
    id: 'open',
    header: 'Not sent yet',
    value: (row) => row.open?.number ?? '',
    cell: (row) => row.open?.number ?? 'none',
    width: 'fit',
  },
  { id: 'uncertain', header: 'Uncertain', align: 'end', value: (row) => row.uncertain, width: 'fit' },
  { id: 'shelf', header: 'On the shelf', align: 'end', value: (row) => row.onShelf, width: 'fit' },
  { id: 'cases', header: 'With cases', align: 'end', value: (row) => row.withCases, width: 'fit' },
  {
    id: 'sent',
    header: 'Last sent',
    value: (row) => row.lastSent ?? '',
    cell: (row) => row.lastSent ?? 'never',
    width: 'fit',
    sortable: false,
  },
];

/** Owners of stock on consignment, and what waits for each. */
export function OwnersTable({ rows }: { rows: Row[] }) {
  return (
    <DataTable
      caption="Owners"
      hideCaption
      columns={COLUMNS}
      rows={rows}
      rowKey={(row) => row.id}
      rowHref={(row) => `/consignment/${row.id}`}
      rowTone={(row) => (row.lines > 0 ? 'attention' : null)}
      urlKey="owners"
      empty="Nobody’s stock lies here on consignment."
    />
  );
}
