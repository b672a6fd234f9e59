import { and, asc, eq, lte } from 'drizzle-orm';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { mayRead, type Reading } from '../../reader';
import { items, places, stock } from '../../schema';
import { onShelf } from '../shelf/onShelf';

/** A lot that is past its use-by, or will be by a day. */
export interface LotNearUseBy {
  itemId: string;
  name: string;
  lot: string | null;
  useBy: PlainDate;
  quantity: number;
  place: string;
}

/** Lots that lie on the shelf and whose use-by is on or before `until`, the earliest first. */
export async function lotsNearUseBy(db: Reading, until: PlainDate): Promise<LotNearUseBy[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ heap: stock, name: items.name, place: places.name })
    .from(stock)
    .innerJoin(items, eq(items.id, stock.itemId))
    .innerJoin(places, eq(places.id, stock.placeId))
    .where(and(onShelf, lte(stock.useBy, until)))
    .orderBy(asc(stock.useBy), asc(items.name));
  return rows.map(({ heap, name, place }) => ({
    itemId: heap.itemId,
    name,
    lot: heap.lot,
    useBy: plainDate.parse(heap.useBy),
    quantity: heap.quantity,
    place,
  }));
}
