'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';

export interface LineRow {
  id: string;
  position: number;
  tray: number;
  code: string | null;
  name: string;
  known: boolean;
  /** `null`: nobody says. */
  implant: boolean | null;
  listed: number;
  came: string | null;
  used: number;
  goes: string | null;
  wrong: string;
}

const columns: Column<LineRow>[] = [
  { id: 'position', header: 'Line', value: (row) => row.position, align: 'end', width: 'fit' },
  { id: 'tray', header: 'Tray', value: (row) => row.tray, align: 'end', width: 'fit' },
  { id: 'code', header: 'Code', value: (row) => row.code, width: 'code' },
  {
    id: 'name',
    header: 'Item',
    value: (row) => row.name,
    cell: (row) =>
      row.known ? (
        row.name
      ) : (
        <>
          {row.name}{' '}
          <Status tone="unknown" look="plain">
            not in the catalogue
          </Status>
        </>
      ),
    width: 'name',
  },
  {
    id: 'implant',
    header: 'Implant',
    value: (row) => (row.implant === null ? null : row.implant ? 'yes' : 'no'),
    width: 'fit',
  },
  { id: 'listed', header: 'Listed', value: (row) => row.listed, align: 'end', width: 'fit' },
  { id: 'came', header: 'Came', value: (row) => row.came, align: 'end', width: 'fit' },
  { id: 'used', header: 'Used', value: (row) => row.used, align: 'end', width: 'fit' },
  { id: 'goes', header: 'Goes back', value: (row) => row.goes, align: 'end', width: 'fit' },
  {
    id: 'wrong',
    header: 'Not as it should be',
    value: (row) => row.wrong,
    cell: (row) =>
      row.wrong === '' ? (
        '–'
      ) : (
        <Status tone="attention" look="plain">
          {row.wrong}
        </Status>
      ),
    width: 'phrase',
  },
];

/** The content list of a loan, and what became of each line. */
export function LineTable({ rows }: { rows: readonly LineRow[] }) {
  return (
    <DataTable
      caption="Content of the loan"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={(row) => row.id}
      urlKey="lines"
      sort="position"
      phone="scroll"
      dense
      empty="The lender’s list is not here yet."
    />
  );
}
