'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { Refill } from '@/db/queries/restock/refills';
import type { TurnStep } from '@/lib/sets/setState';
import { TURN_STEP_WORDS } from '@/lib/wording/sets';

const COLUMNS: Column<Refill>[] = [
  { id: 'set', header: 'Set', value: (row) => row.set, width: 'code' },
  {
    id: 'step',
    header: 'Stands',
    value: (row) => TURN_STEP_WORDS[row.step as TurnStep] ?? row.step,
    width: 'fit',
  },
  {
    id: 'slot',
    header: 'Layer, row, slot',
    value: (row) => `${row.layer}, ${row.row}, ${row.slot}`,
    width: 'fit',
  },
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'code' },
  { id: 'name', header: 'Name', value: (row) => row.name },
  { id: 'class', header: 'Must-have class', align: 'end', value: (row) => row.mustHaveClass, width: 'fit' },
  {
    id: 'lacks',
    header: 'Lacks',
    align: 'end',
    value: (row) => row.expected - row.found,
    cell: (row) => `${row.expected - row.found} of ${row.expected}`,
    width: 'fit',
  },
  {
    id: 'shelf',
    header: 'On the shelf',
    align: 'end',
    value: (row) => row.onShelf,
    cell: (row) =>
      row.onShelf === null ? (
        'you count it now'
      ) : row.onShelf > 0 ? (
        row.onShelf
      ) : (
        <Status tone="attention" look="plain">
          none
        </Status>
      ),
    width: 'fit',
  },
  {
    id: 'first',
    header: 'Take first',
    value: (row) => row.first?.useBy ?? null,
    cell: (row) =>
      row.first === null
        ? ''
        : `${row.first.lot === null ? 'lot not stated' : `lot ${row.first.lot}`}, ${row.first.useBy === null ? 'no use-by stated' : `use-by ${row.first.useBy}`}, ${row.first.place}`,
  },
];

/** Slots that lack pieces, with what the shelf has of them. */
export function RefillTable({ rows }: { rows: Refill[] }) {
  return (
    <DataTable
      caption="Slots to refill"
      hideCaption
      columns={COLUMNS}
      rows={rows}
      rowKey={(row) => row.key}
      rowHref={(row) => `/sets/${row.setId}`}
      urlKey="refill"
      pageSize={25}
      empty="No slot lacks a piece."
    />
  );
}
