'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import { ItemName, LifeStatus } from './item-cells';
import type { LotTableRow } from './stock-rows';
import { LOT_VALUES, STOCK_A_PAGE } from './stock-values';

const columns: Column<LotTableRow>[] = [
  { id: 'code', header: 'Item', value: LOT_VALUES.code, width: 'fit' },
  {
    id: 'name',
    header: 'Name',
    value: LOT_VALUES.name,
    width: 'wide',
    cell: (row) => <ItemName name={row.name} status={row.status} />,
  },
  {
    id: 'turn',
    header: 'Turn',
    value: LOT_VALUES.turn,
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
    value: LOT_VALUES.pieces,
    cell: (row) => row.pieces ?? 'you count it now',
    width: 'fit',
  },
  {
    id: 'free',
    header: 'Free',
    align: 'end',
    value: LOT_VALUES.free,
    cell: (row) => row.free ?? '',
    width: 'fit',
  },
  { id: 'lot', header: 'Lot', value: LOT_VALUES.lot },
  { id: 'useBy', header: 'Use-by', value: LOT_VALUES.useBy, width: 'fit' },
  {
    id: 'state',
    header: 'Use-by stands',
    value: LOT_VALUES.state,
    cell: (row) => <LifeStatus life={row.state} />,
  },
  {
    id: 'held',
    header: 'Held, because',
    value: LOT_VALUES.held,
    cell: (row) => (row.held === null ? '' : <Status tone="attention">{row.held}</Status>),
  },
  { id: 'place', header: 'Place', value: LOT_VALUES.place },
  { id: 'owner', header: 'Owner', value: LOT_VALUES.owner },
  { id: 'form', header: 'Form', value: LOT_VALUES.form, hiddenAtFirst: true },
  { id: 'maker', header: 'Maker', value: LOT_VALUES.maker, hiddenAtFirst: true },
];

/** One row a heap: an item, a lot, a use-by, a place. */
export function LotTable({ rows, total }: { rows: LotTableRow[]; total: number }) {
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
      pageSize={STOCK_A_PAGE}
      served={{ total }}
      empty="Nothing on the shelves answers to this."
    />
  );
}
