import { and, eq, inArray } from 'drizzle-orm';
import { type Likeness, lookAlikesOf } from '@/lib/bench/lookAlikes';
import type { Item } from '@/lib/catalogue/item';
import { groupBy } from '@/lib/lists/groupBy';
import { itemFromRow } from '../../mappers/item';
import { mayRead, type Reading } from '../../reader';
import { items, places, stock } from '../../schema';
import { onShelf } from './onShelf';

/** An item that is easily taken for another one, and where it lies. */
export interface LookAlikeOnShelf {
  itemId: string;
  code: string;
  name: string;
  because: Likeness;
  places: { id: string; name: string }[];
}

/** What pieces of this item are easily taken for, of all that lies on the shelves now. */
export async function lookAlikesOnShelf(db: Reading, item: Item): Promise<LookAlikeOnShelf[]> {
  mayRead(db, 'readHospital');
  const lying = await db.read
    .selectDistinct({ itemId: stock.itemId, placeId: places.id, place: places.name })
    .from(stock)
    .innerJoin(items, eq(items.id, stock.itemId))
    .innerJoin(places, eq(places.id, stock.placeId))
    .where(and(onShelf, eq(items.kind, item.kind)))
    .orderBy(places.name);
  const byItem = groupBy(lying, ({ itemId }) => itemId);
  if (byItem.size === 0) return [];
  const others = await db.read
    .select()
    .from(items)
    .where(inArray(items.id, [...byItem.keys()]))
    .orderBy(items.code);
  return lookAlikesOf(item, others.map(itemFromRow)).map(({ item: other, because }) => ({
    itemId: other.id,
    code: other.code,
    name: other.name,
    because,
    places: (byItem.get(other.id) ?? []).map(({ placeId, place }) => ({ id: placeId, name: place })),
  }));
}
