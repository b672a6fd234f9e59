import { inArray } from 'drizzle-orm';
import type { NamedItem } from '@/lib/exchange/plans/itemOf';
import type { StockFacts } from '@/lib/exchange/plans/stock';
import { stockForm, stockOwner } from '@/lib/stock/stock';
import type { Queries } from '../../client';
import { items, places, stock } from '../../schema';
import type { Person } from '../people';
import { heapsCountedBy } from '../shelf/blindHeaps';
import { heapsAt, lotsUnderRecall } from '../shelf/heapAt';

/** Items by the names lists call them. */
export async function namedItems(read: Queries): Promise<NamedItem[]> {
  const rows = await read
    .select({
      id: items.id,
      code: items.code,
      name: items.name,
      gtin: items.gtin,
      status: items.status,
      packMultiple: items.packMultiple,
    })
    .from(items);
  return rows.map((row) => ({
    ...row,
    status: row.status === 'withdrawn' || row.status === 'recalled' ? row.status : 'current',
  }));
}

export async function namedPlaces(read: Queries): Promise<StockFacts['places']> {
  const rows = await read.select().from(places);
  return rows.map(({ id, name, withdrawnAt }) => ({ id, name, inUse: withdrawnAt === null }));
}

/** SQLite binds at most 32,766 values in one statement. */
const AT_ONCE = 5_000;

/** What is on the shelves of the items that a list names, with what may be taken of it. */
export async function stockFacts(
  read: Queries,
  itemIds: readonly string[],
  { person, now }: { person: Person; now: string },
): Promise<Omit<StockFacts, 'items'>> {
  const heaps: StockFacts['heaps'][number][] = [];
  for (let at = 0; at < itemIds.length; at += AT_ONCE) {
    const rows = await read
      .select({ id: stock.id })
      .from(stock)
      .where(inArray(stock.itemId, itemIds.slice(at, at + AT_ONCE)));
    for (let from = 0; from < rows.length; from += AT_ONCE) {
      const some = await heapsAt(
        read,
        rows.slice(from, from + AT_ONCE).map(({ id }) => id),
        now,
      );
      heaps.push(
        ...some.map(({ row, free, labels }) => ({
          ...row,
          form: stockForm.parse(row.form),
          owner: stockOwner.parse(row.owner),
          free,
          labels,
        })),
      );
    }
  }
  const [there, lotUnderRecall, countedBlind] = await Promise.all([
    namedPlaces(read),
    lotsUnderRecall(read, itemIds),
    heapsCountedBy(read, person.id),
  ]);
  return { places: there, heaps, lotUnderRecall, countedBlind };
}

/** Codes of items and lots on record, by which damaged ones are known. */
export async function knownOnShelves(read: Queries): Promise<Record<string, ReadonlySet<string>>> {
  const [codes, lots] = await Promise.all([
    read.select({ code: items.code }).from(items),
    read.selectDistinct({ lot: stock.lot }).from(stock),
  ]);
  return {
    item: new Set(codes.map(({ code }) => code)),
    lot: new Set(lots.flatMap(({ lot }) => lot ?? [])),
  };
}
