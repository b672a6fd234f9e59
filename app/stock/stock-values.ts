import { USE_BY_WORDS } from '@/lib/wording/stock';
import type { ItemTableRow, LotTableRow } from './stock-rows';

/** As many rows as one page of the list holds. */
export const STOCK_A_PAGE = 100;

/** What of the address the list is served by. */
export const STOCK_NAMES = [
  'view',
  'q',
  'show',
  'items-sort',
  'items-page',
  'stock-sort',
  'stock-page',
] as const;

/** What each column of the items is sorted by, here and on the server. */
export const ITEM_VALUES = {
  code: (row: ItemTableRow) => row.code,
  name: (row: ItemTableRow) => row.name,
  pieces: (row: ItemTableRow) => row.pieces,
  free: (row: ItemTableRow) => row.free,
  next: (row: ItemTableRow) => (row.next === null ? '' : (row.next.lot ?? '')),
  useBy: (row: ItemTableRow) => row.next?.useBy ?? null,
  state: (row: ItemTableRow) => (row.past > 0 ? 0 : row.soon > 0 ? 1 : row.held > 0 ? 2 : 3),
  heaps: (row: ItemTableRow) => row.heaps,
  maker: (row: ItemTableRow) => row.maker,
};

/** The same of the heaps. */
export const LOT_VALUES = {
  code: (row: LotTableRow) => row.code,
  name: (row: LotTableRow) => row.name,
  turn: (row: LotTableRow) => row.turn ?? 99,
  pieces: (row: LotTableRow) => row.pieces,
  free: (row: LotTableRow) => row.free,
  lot: (row: LotTableRow) => row.lot,
  useBy: (row: LotTableRow) => row.useBy,
  state: (row: LotTableRow) => USE_BY_WORDS[row.state],
  held: (row: LotTableRow) => row.held ?? '',
  place: (row: LotTableRow) => row.place,
  owner: (row: LotTableRow) => row.owner,
  form: (row: LotTableRow) => row.form,
  maker: (row: LotTableRow) => row.maker,
};
