import 'server-only';
import { type ServedRows, servedPage } from '@/app/_ui/served-rows';
import type { Database } from '@/db/client';
import { readSetting } from '@/db/queries/settings';
import { shelfItems } from '@/db/queries/shelf/shelfLots';
import { wallClock } from '@/lib/theatre/localTime';
import { type ItemTableRow, keptRows, type LotTableRow, type ShelfOfItem } from './stock-rows';
import { ITEM_VALUES, LOT_VALUES, STOCK_A_PAGE } from './stock-values';

/** One page of the shelves: by item, or heap by heap. */
export type ServedStock =
  | ({ view: 'items' } & ServedRows<ItemTableRow>)
  | ({ view: 'lots' } & ServedRows<LotTableRow>);

/** What lies on the shelves, by item, with how each use-by stands today. */
export interface Shelves {
  items: readonly ShelfOfItem[];
  soonDays: number;
}

export async function loadShelves(db: Database, now: string): Promise<Shelves> {
  const today = wallClock(now).date;
  const [shelf, { soonDays }] = await Promise.all([shelfItems(db, now), readSetting(db.read, 'stock')]);
  return { items: shelf.map((lots) => keptRows(lots, { today, soonDays })), soonDays };
}

export async function servedStock(
  db: Database,
  params: Pick<URLSearchParams, 'get'>,
  now: string,
): Promise<ServedStock> {
  return stockPage(await loadShelves(db, now), params);
}

/** The rows that an address asks for: found by words, narrowed to what needs looking at, sorted, and one page of them. */
export function stockPage({ items }: Shelves, params: Pick<URLSearchParams, 'get'>): ServedStock {
  const words = (params.get('q') ?? '').toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean);
  const show = params.get('show') ?? 'all';
  const found = <R extends { text: string }>(
    rows: readonly R[],
    isShown: (row: R, show: string) => boolean,
  ) =>
    words.length === 0 && show === 'all'
      ? rows
      : rows.filter((row) => words.every((word) => row.text.includes(word)) && isShown(row, show));
  const asked = (key: string) => ({
    sort: params.get(`${key}-sort`) ?? '',
    page: params.get(`${key}-page`),
    pageSize: STOCK_A_PAGE,
  });
  if (params.get('view') === 'lots') {
    const all = items.flatMap(({ lots }) => lots);
    const rows = found(all, lotShown);
    return {
      view: 'lots',
      rows: servedPage<LotTableRow>(rows, LOT_VALUES, asked('stock')).map(withoutText),
      found: rows.length,
      total: all.length,
    };
  }
  const all = items.map(({ item }) => item);
  const rows = found(all, itemShown);
  return {
    view: 'items',
    rows: servedPage<ItemTableRow>(rows, ITEM_VALUES, asked('items')).map(withoutText),
    found: rows.length,
    total: all.length,
  };
}

/** What is searched is not sent. */
const withoutText = <R extends { text: string }>(row: R): R => ({ ...row, text: '' });

const lotShown = (row: LotTableRow, show: string): boolean => {
  switch (show) {
    case 'all':
      return true;
    case 'held':
      return row.held !== null;
    case 'consignment':
      return row.owner.startsWith('consignment');
    case 'nothingFree':
      return row.turn === null;
    default:
      return row.state === show;
  }
};

const itemShown = (row: ItemTableRow, show: string): boolean => {
  switch (show) {
    case 'past':
    case 'soon':
    case 'held':
    case 'consignment':
    case 'none':
      return row[show] > 0;
    case 'nothingFree':
      return row.next === null;
    default:
      return true;
  }
};
