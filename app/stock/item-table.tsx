'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import { ItemName, LifeStatus } from './item-cells';
import type { ItemTableRow } from './stock-rows';
import { ITEM_VALUES, STOCK_A_PAGE } from './stock-values';

const COUNTED_NOW = 'you count it now';

const columns: Column<ItemTableRow>[] = [
  { id: 'code', header: 'Item', value: ITEM_VALUES.code, width: 'code' },
  {
    id: 'name',
    header: 'Name',
    value: ITEM_VALUES.name,
    width: 'name',
    cell: (row) => <ItemName name={row.name} status={row.status} />,
  },
  {
    id: 'pieces',
    header: 'Pieces',
    align: 'end',
    value: ITEM_VALUES.pieces,
    cell: (row) => row.pieces ?? COUNTED_NOW,
    width: 'fit',
  },
  {
    id: 'free',
    header: 'Free',
    align: 'end',
    value: ITEM_VALUES.free,
    cell: (row) => row.free ?? '',
    width: 'fit',
  },
  {
    id: 'state',
    header: 'Stands',
    value: ITEM_VALUES.state,
    cell: (row) => (
      <>
        {row.past > 0 ? <Status tone="stop">{`${row.past} past use-by`}</Status> : null}{' '}
        {row.soon > 0 ? <Status tone="attention">{`${row.soon} soon`}</Status> : null}{' '}
        {row.held > 0 ? <Status tone="attention">{`${row.held} held`}</Status> : null}
        {row.past + row.soon + row.held === 0 && row.next !== null ? (
          <LifeStatus life={row.next.state} />
        ) : null}
      </>
    ),
  },
  {
    id: 'next',
    header: 'Take first',
    value: ITEM_VALUES.next,
    width: 'phrase',
    cell: (row) =>
      row.next === null ? (
        <Status tone="attention" look="plain">
          nothing to take today
        </Status>
      ) : (
        `${row.next.lot === null ? 'no lot stated' : `lot ${row.next.lot}`}, ${row.next.place}`
      ),
  },
  { id: 'useBy', header: 'Its use-by', value: ITEM_VALUES.useBy, width: 'fit' },
  { id: 'heaps', header: 'Heaps', align: 'end', value: ITEM_VALUES.heaps, width: 'fit' },
  { id: 'maker', header: 'Maker', value: ITEM_VALUES.maker, hiddenAtFirst: true },
];

/** One row an item, with the heap that is taken first. */
export function ItemTable({ rows, total }: { rows: ItemTableRow[]; total: number }) {
  return (
    <DataTable
      caption="Stock by item"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={(row) => row.itemId}
      rowHref={(row) => `/stock/${row.itemId}`}
      rowTone={(row) => (row.past > 0 ? 'stop' : row.held > 0 || row.soon > 0 ? 'attention' : null)}
      urlKey="items"
      pageSize={STOCK_A_PAGE}
      served={{ total }}
      empty="Nothing on the shelves answers to this."
    />
  );
}
