import { and, asc, eq, ne } from 'drizzle-orm';
import type { ThingAtHand } from '@/lib/caseLife/act';
import type { Queries } from '../../client';
import { items, packs, places, sets, stock } from '../../schema';

export interface HeapAtHand {
  heap: typeof stock.$inferSelect;
  item: { id: string; name: string; status: string };
  placeName: string;
  /** Our own pouch whose label was read. */
  pouch: { id: string; number: string; state: string } | null;
  /** As the pack itself says, where it says it. */
  saidUseBy: string | null;
}

/** What a thing in somebody’s hand is on record. */
export type OnRecord =
  | { kind: 'set'; set: typeof sets.$inferSelect; packId: string | null }
  | ({ kind: 'pack' } & HeapAtHand)
  | { kind: 'unknown'; why: 'noSuchThing' }
  | { kind: 'unknown'; why: 'notSterile'; name: string }
  | { kind: 'unknown'; why: 'lotUnknown'; itemId: string; name: string; lot: string }
  | { kind: 'unknown'; why: 'lotNotSaid'; itemId: string; name: string };

/**
 * Finds what was scanned or pointed at, inside or outside a write. Of several heaps of one lot the one named on the list
 * goes first, then what is sterile and not held; a code that does not say its lot is no more than guessed at where several
 * lie in store, so it is not taken.
 */
export async function thingOnRecord(
  read: Queries,
  thing: ThingAtHand,
  listed: ReadonlySet<string>,
): Promise<OnRecord> {
  switch (thing.kind) {
    case 'set': {
      const [set] = await read.select().from(sets).where(eq(sets.id, thing.setId));
      return set ? { kind: 'set', set, packId: thing.packId } : { kind: 'unknown', why: 'noSuchThing' };
    }
    case 'pouch':
      return pouchOnRecord(read, thing.packId);
    case 'stock': {
      const [row] = await heapsWhere(read, eq(stock.id, thing.stockId));
      return row
        ? { kind: 'pack', ...row, pouch: null, saidUseBy: null }
        : { kind: 'unknown', why: 'noSuchThing' };
    }
    case 'item':
      return itemOnRecord(read, thing, listed);
  }
}

async function pouchOnRecord(read: Queries, packId: string): Promise<OnRecord> {
  const [row] = await read
    .select({ pack: packs, name: items.name })
    .from(packs)
    .leftJoin(items, eq(items.id, packs.itemId))
    .where(eq(packs.id, packId));
  if (row?.pack.kind !== 'pouch') return { kind: 'unknown', why: 'noSuchThing' };
  const { id, number, state, stockId, useBy } = row.pack;
  const [heap] = stockId === null ? [] : await heapsWhere(read, eq(stock.id, stockId));
  if (!heap) return { kind: 'unknown', why: 'notSterile', name: row.name ?? number };
  return { kind: 'pack', ...heap, pouch: { id, number, state }, saidUseBy: useBy };
}

async function itemOnRecord(
  read: Queries,
  thing: Extract<ThingAtHand, { kind: 'item' }>,
  listed: ReadonlySet<string>,
): Promise<OnRecord> {
  const [item] = await read.select({ name: items.name }).from(items).where(eq(items.id, thing.itemId));
  if (!item) return { kind: 'unknown', why: 'noSuchThing' };
  const { itemId, lot } = thing;
  const all = await heapsWhere(
    read,
    lot === null
      ? and(eq(stock.itemId, itemId), ne(stock.form, 'unsterile'))
      : and(eq(stock.itemId, itemId), eq(stock.lot, lot)),
  );
  if (lot === null && all.length !== 1) {
    if (all.length === 0) return { kind: 'unknown', why: 'noSuchThing' };
    return { kind: 'unknown', why: 'lotNotSaid', itemId, name: item.name };
  }
  const [best] = [...all].sort(
    (a, b) =>
      Number(listed.has(b.heap.id)) - Number(listed.has(a.heap.id)) ||
      Number(a.heap.form === 'unsterile') - Number(b.heap.form === 'unsterile') ||
      Number(a.heap.heldBecause !== null) - Number(b.heap.heldBecause !== null),
  );
  if (!best) return { kind: 'unknown', why: 'lotUnknown', itemId, name: item.name, lot: lot ?? '' };
  return { kind: 'pack', ...best, pouch: null, saidUseBy: thing.useBy };
}

function heapsWhere(read: Queries, where: ReturnType<typeof and>) {
  return read
    .select({
      heap: stock,
      item: { id: items.id, name: items.name, status: items.status },
      placeName: places.name,
    })
    .from(stock)
    .innerJoin(items, eq(items.id, stock.itemId))
    .innerJoin(places, eq(places.id, stock.placeId))
    .where(where)
    .orderBy(asc(stock.useBy), asc(stock.id));
}
