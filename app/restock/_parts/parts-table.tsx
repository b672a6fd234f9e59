'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';

interface Row {
  id: string;
  code: string;
  name: string;
  quantity: number;
  lot: string | null;
  useBy: string | null;
  place: string;
  by: string;
  came: string;
}

const COLUMNS: Column<Row>[] = [
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'code' },
  { id: 'name', header: 'Name', value: (row) => row.name },
  { id: 'quantity', header: 'Pieces', align: 'end', value: (row) => row.quantity, width: 'fit' },
  { id: 'lot', header: 'Lot', value: (row) => row.lot, width: 'code' },
  { id: 'useBy', header: 'Use-by', value: (row) => row.useBy, width: 'fit' },
  { id: 'place', header: 'Put at', value: (row) => row.place },
  { id: 'came', header: 'Came', value: (row) => row.came, sortable: false, width: 'fit' },
  { id: 'by', header: 'Received by', value: (row) => row.by },
];

/** Everything that came of an order, part by part. */
export function PartsTable({ rows }: { rows: Row[] }) {
  return (
    <DataTable
      caption="What came"
      hideCaption
      columns={COLUMNS}
      rows={rows}
      rowKey={(row) => row.id}
      urlKey="parts"
      empty="Nothing came yet."
    />
  );
}
