import 'server-only';
import { type ServedRows, servedPage } from '@/app/_ui/served-rows';
import type { Database } from '@/db/client';
import { readSetting } from '@/db/queries/settings';
import { type ShelfLotRow, shelfLots } from '@/db/queries/shelf/shelfLots';
import { type ShelfLife, shelfLifeOf } from '@/lib/stock/shelfLife';
import { wallClock } from '@/lib/theatre/localTime';
import { type ItemTableRow, itemRows, type LotTableRow, lotRows } from './stock-rows';
import { ITEM_VALUES, LOT_VALUES, STOCK_A_PAGE } from './stock-values';

/** One page of the shelves: by item, or heap by heap. */
export type ServedStock =
  | ({ view: 'items' } & ServedRows<ItemTableRow>)
  | ({ view: 'lots' } & ServedRows<LotTableRow>);

/** What lies on the shelves, with how each use-by stands today. */
export interface Shelves {
  lots: ShelfLotRow[];
  lifeOf: ShelfLife[];
  soonDays: number;
}

export async function loadShelves(db: Database, now: string): Promise<Shelves> {
  const today = wallClock(now).date;
  const [lots, { soonDays }] = await Promise.all([shelfLots(db, now), readSetting(db.read, 'stock')]);
  return { lots, lifeOf: lots.map(({ useBy }) => shelfLifeOf(useBy, today, soonDays)), soonDays };
}

export async function servedStock(
  db: Database,
  params: Pick<URLSearchParams, 'get'>,
  now: string,
): Promise<ServedStock> {
  return stockPage(await loadShelves(db, now), params);
}

/** The rows that an address asks for: found by words, narrowed to what needs looking at, sorted, and one page of them. */
export function stockPage({ lots, lifeOf }: Shelves, params: Pick<URLSearchParams, 'get'>): ServedStock {
  const words = (params.get('q') ?? '').toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean);
  const show = params.get('show') ?? 'all';
  const found = <R extends { text: string }>(rows: R[]) =>
    rows.filter(({ text }) => words.every((word) => text.includes(word)));
  const asked = (key: string) => ({
    sort: params.get(`${key}-sort`) ?? '',
    page: params.get(`${key}-page`),
    pageSize: STOCK_A_PAGE,
  });
  if (params.get('view') === 'lots') {
    const all = lotRows(lots, lifeOf, words.length > 0);
    const rows = found(all).filter((row) => lotShown(row, show));
    return {
      view: 'lots',
      rows: servedPage<LotTableRow>(rows, LOT_VALUES, asked('stock')),
      found: rows.length,
      total: all.length,
    };
  }
  const all = itemRows(lots, lifeOf, words.length > 0);
  const rows = found(all).filter((row) => itemShown(row, show));
  return {
    view: 'items',
    rows: servedPage<ItemTableRow>(rows, ITEM_VALUES, asked('items')),
    found: rows.length,
    total: all.length,
  };
}

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
