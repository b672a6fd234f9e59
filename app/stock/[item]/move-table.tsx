'use client';

import Link from 'next/link';
import { type Column, DataTable } from '@/app/_ui/data-table';

export interface MoveTableRow {
  seq: number;
  at: string;
  when: string;
  what: string;
  sign: 1 | 0 | -1;
  quantity: number;
  lot: string | null;
  from: string | null;
  to: string | null;
  caseId: string | null;
  /** The case or delivery it is of. */
  of: string | null;
  by: string | null;
}

const signed = ({ sign, quantity }: MoveTableRow): string =>
  `${sign > 0 ? '+' : sign < 0 ? '−' : ''}${quantity}`;

const columns: Column<MoveTableRow>[] = [
  { id: 'when', header: 'When', value: (row) => row.at, cell: (row) => row.when, width: 'fit' },
  { id: 'what', header: 'What', value: (row) => row.what, width: 'phrase' },
  {
    id: 'pieces',
    header: 'Pieces',
    align: 'end',
    value: (row) => row.sign * row.quantity,
    cell: signed,
    width: 'fit',
  },
  { id: 'lot', header: 'Lot', value: (row) => row.lot },
  { id: 'from', header: 'From', value: (row) => row.from ?? '' },
  { id: 'to', header: 'To', value: (row) => row.to ?? '' },
  {
    id: 'of',
    header: 'Case or delivery',
    value: (row) => row.of ?? '',
    cell: (row) => (row.caseId === null ? row.of : <Link href={`/cases/${row.caseId}`}>{row.of}</Link>),
  },
  { id: 'by', header: 'By', value: (row) => row.by ?? '' },
];

/** What came onto the shelves and left them. */
export function MoveTable({ rows }: { rows: MoveTableRow[] }) {
  return (
    <DataTable
      caption="Moves"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={(row) => String(row.seq)}
      urlKey="moves"
      pageSize={25}
      empty="Nothing has come or gone since the record began."
    />
  );
}
