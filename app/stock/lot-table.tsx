'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import { USE_BY_WORDS } from '@/lib/wording/stock';
import { ItemName, LifeStatus } from './item-cells';
import type { LotTableRow } from './stock-rows';

const columns: Column<LotTableRow>[] = [
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'fit' },
  {
    id: 'name',
    header: 'Name',
    value: (row) => row.name,
    width: 'wide',
    cell: (row) => <ItemName name={row.name} status={row.status} />,
  },
  {
    id: 'turn',
    header: 'Turn',
    value: (row) => row.turn ?? 99,
    cell: (row) =>
      row.turn === 1 ? (
        <Status tone="good" look="plain">
          {row.turnWords}
        </Status>
      ) : (
        row.turnWords
      ),
  },
  {
    id: 'pieces',
    header: 'Pieces',
    align: 'end',
    value: (row) => row.pieces,
    cell: (row) => row.pieces ?? 'you count it now',
    width: 'fit',
  },
  {
    id: 'free',
    header: 'Free',
    align: 'end',
    value: (row) => row.free,
    cell: (row) => row.free ?? '',
    width: 'fit',
  },
  { id: 'lot', header: 'Lot', value: (row) => row.lot },
  { id: 'useBy', header: 'Use-by', value: (row) => row.useBy, width: 'fit' },
  {
    id: 'state',
    header: 'Use-by stands',
    value: (row) => USE_BY_WORDS[row.state],
    cell: (row) => <LifeStatus life={row.state} />,
  },
  {
    id: 'held',
    header: 'Held, because',
    value: (row) => row.held ?? '',
    cell: (row) => (row.held === null ? '' : <Status tone="attention">{row.held}</Status>),
  },
  { id: 'place', header: 'Place', value: (row) => row.place },
  { id: 'owner', header: 'Owner', value: (row) => row.owner },
  { id: 'form', header: 'Form', value: (row) => row.form, hiddenAtFirst: true },
  { id: 'maker', header: 'Maker', value: (row) => row.maker, hiddenAtFirst: true },
];

/** One row a heap: an item, a lot, a use-by, a place. */
export function LotTable({ rows }: { rows: LotTableRow[] }) {
  return (
    <DataTable
      caption="Stock by lot and place"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={(row) => row.id}
      rowHref={(row) => `/stock/${row.itemId}`}
      rowTone={(row) => (row.state === 'past' ? 'stop' : row.held !== null ? 'attention' : null)}
      urlKey="stock"
      empty="Nothing on the shelves answers to this."
    />
  );
}
