'use client';

import Link from 'next/link';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { writePence } from '@/lib/quantities/money';

interface CaseRow {
  id: string;
  reference: string;
  on: string;
  procedure: string;
  implantedPence: number;
  wastedPence: number;
  totalPence: number;
  whole: boolean;
  wastePercent: number | null;
  workingHref: string;
}

const columns: Column<CaseRow>[] = [
  {
    id: 'case',
    header: 'Case',
    value: (row) => row.reference,
    cell: (row) => <Link href={`/cases/${row.id}`}>{row.reference}</Link>,
    width: 'fit',
  },
  { id: 'on', header: 'Day', value: (row) => row.on, width: 'fit' },
  { id: 'procedure', header: 'Procedure', value: (row) => row.procedure, width: 'wide' },
  {
    id: 'implanted',
    header: 'Implanted',
    align: 'end',
    value: (row) => row.implantedPence,
    cell: (row) => writePence(row.implantedPence),
  },
  {
    id: 'wasted',
    header: 'Wasted',
    align: 'end',
    value: (row) => row.wastedPence,
    cell: (row) => writePence(row.wastedPence),
  },
  {
    id: 'share',
    header: 'Share of waste',
    unit: '%',
    align: 'end',
    value: (row) => row.wastePercent,
    cell: (row) => row.wastePercent?.toFixed(1) ?? 'not known',
  },
  {
    id: 'total',
    header: 'Cost',
    align: 'end',
    value: (row) => row.totalPence,
    cell: (row) => (
      <Link href={row.workingHref}>{`${row.whole ? '' : 'at least '}${writePence(row.totalPence)}`}</Link>
    ),
  },
];

/** Every case with what it cost; the cost leads to its working. */
export function CaseTable({ rows }: { rows: CaseRow[] }) {
  return (
    <DataTable
      caption="Cost by case"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={({ id }) => id}
      urlKey="cases"
      pageSize={25}
    />
  );
}
