import { asc, eq } from 'drizzle-orm';
import { type ItemId, itemId, type StockId, stockId } from '@/lib/identity/ids';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { type StockForm, stockForm, stockOwner } from '@/lib/stock/stock';
import { mayRead, type Reading } from '../reader';
import { items, makers, places, stock } from '../schema';
import { onShelf } from './shelf/onShelf';

/** One heap on the shelf: an item, a lot, a use-by, a place. */
export interface StockRow {
  id: StockId;
  itemId: ItemId;
  code: string;
  name: string;
  kind: string;
  maker: string;
  status: 'current' | 'withdrawn' | 'recalled';
  form: StockForm;
  quantity: number;
  lot: string | null;
  useBy: PlainDate | null;
  owner: 'ours' | 'consignment';
  place: string;
  heldBecause: string | null;
}

/** Everything that lies on the shelves, what is past use-by and held too; the earliest use-by first, none stated last. */
export async function listStock(db: Reading): Promise<StockRow[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = await read
    .select({
      stock,
      code: items.code,
      name: items.name,
      kind: items.kind,
      status: items.status,
      maker: makers.name,
      place: places.name,
    })
    .from(stock)
    .innerJoin(items, eq(items.id, stock.itemId))
    .innerJoin(makers, eq(makers.id, items.makerId))
    .innerJoin(places, eq(places.id, stock.placeId))
    .where(onShelf)
    .orderBy(asc(items.code), asc(stock.useBy), asc(stock.id));
  return rows
    .map(
      ({ stock: row, status, ...rest }): StockRow => ({
        ...rest,
        id: stockId.parse(row.id),
        itemId: itemId.parse(row.itemId),
        status: status === 'withdrawn' || status === 'recalled' ? status : 'current',
        form: stockForm.parse(row.form),
        quantity: row.quantity,
        lot: row.lot,
        useBy: row.useBy === null ? null : plainDate.parse(row.useBy),
        owner: stockOwner.parse(row.owner),
        heldBecause: row.heldBecause,
      }),
    )
    .sort((a, b) =>
      (a.useBy ?? '9999') < (b.useBy ?? '9999') ? -1 : (a.useBy ?? '9999') > (b.useBy ?? '9999') ? 1 : 0,
    );
}
