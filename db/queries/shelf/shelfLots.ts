import { and, eq, gt } from 'drizzle-orm';
import { groupBy } from '@/lib/lists/groupBy';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { freeOf, type HeapFacts, inOrder, type NotTaken } from '@/lib/stock/firstOut';
import { type StockForm, stockForm, stockOwner } from '@/lib/stock/stock';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { items, lenders, makers, packs, places, stock } from '../../schema';
import { onKits } from '../caseLife/standing';
import { promisedPouches } from '../short/decisions';
import { heapsHiddenFrom } from './blindHeaps';

/** One heap as the shelf shows it. */
export interface ShelfLotRow {
  id: string;
  revision: number;
  itemId: string;
  code: string;
  name: string;
  maker: string;
  status: 'current' | 'withdrawn' | 'recalled';
  form: StockForm;
  lot: string | null;
  useBy: PlainDate | null;
  owner: 'ours' | 'consignment';
  /** Whose it is, where it is on consignment; `null`: ours, or nobody has stated it. */
  lender: string | null;
  placeId: string;
  place: string;
  heldBecause: string | null;
  /** `null` where the reader counts it now, without seeing the record. */
  pieces: { all: number; free: number; onKits: number; travelling: number } | null;
  /** Its place in the order of taking for a case today, the first is 1; `null`: not taken from, and why. */
  turn: number | null;
  because: NotTaken | null;
  /** Numbers of the labelled pouches in it. */
  labels: string[];
}

/** The heaps of the shelves, or of one item (those that are empty now, where asked), each with its turn: by item code, and within an item in the order of taking. */
export async function shelfLots(
  db: Reading,
  now: string,
  only: { itemId: string; empty?: boolean } | null = null,
): Promise<ShelfLotRow[]> {
  mayRead(db, 'readHospital');
  const today = wallClock(now).date;
  const [rows, itemOf, placeOf, kits, travelling, labels, hidden, owners] = await Promise.all([
    heapRows(db.read, only),
    itemsOnShelf(db.read, only),
    placesById(db.read),
    onKits(db.read),
    promisedPouches(db.read, now),
    db.read
      .select({ stockId: packs.stockId, number: packs.number })
      .from(packs)
      .innerJoin(stock, eq(stock.id, packs.stockId))
      .where(eq(packs.state, 'sterile')),
    heapsHiddenFrom(db),
    db.read.select({ id: lenders.id, name: lenders.name }).from(lenders),
  ]);
  const ownerNames = new Map(owners.map(({ id, name }) => [id, name]));
  const labelsOf = groupBy(labels, ({ stockId }) => stockId);
  const heaps = rows.flatMap((heap) => {
    const [item, place] = [itemOf.get(heap.itemId), placeOf.get(heap.placeId)];
    if (!item || !place) return [];
    const facts: HeapFacts = {
      stockId: heap.id,
      useBy: heap.useBy === null ? null : plainDate.parse(heap.useBy),
      metres: place.metres,
      quantity: heap.quantity,
      onKits: kits.get(heap.id as never) ?? 0,
      travelling: travelling.get(heap.id as never) ?? 0,
      heldBecause: heap.heldBecause,
      status: item.status === 'recalled' || item.status === 'withdrawn' ? item.status : 'current',
    };
    return { ...facts, heap, item, maker: item.maker, place };
  });
  heaps.sort((a, b) => (a.item.code === b.item.code ? 0 : a.item.code < b.item.code ? -1 : 1));
  const byItem = groupBy(heaps, ({ item }) => item.id);
  return [...byItem.values()].flatMap((own) =>
    inOrder(own, today).map(({ heap: one, turn, because }): ShelfLotRow => {
      const { heap, item, maker, place } = one;
      return {
        id: heap.id,
        revision: heap.revision,
        itemId: item.id,
        code: item.code,
        name: item.name,
        maker,
        status: one.status,
        form: stockForm.parse(heap.form),
        lot: heap.lot,
        useBy: one.useBy,
        owner: stockOwner.parse(heap.owner),
        lender: heap.lenderId === null ? null : (ownerNames.get(heap.lenderId) ?? heap.lenderId),
        placeId: place.id,
        place: place.name,
        heldBecause: heap.heldBecause,
        pieces: hidden.has(heap.id)
          ? null
          : { all: heap.quantity, free: freeOf(one), onKits: one.onKits, travelling: one.travelling },
        turn,
        because,
        labels: heap.quantity === 0 ? [] : (labelsOf.get(heap.id) ?? []).map(({ number }) => number),
      };
    }),
  );
}

// what is told of an item and of a place is read once for each, not once for each of thousands of heaps
function heapRows(read: Queries, only: { itemId: string; empty?: boolean } | null) {
  const { id, revision, itemId, form, lot, useBy, quantity, owner, lenderId, placeId, heldBecause } = stock;
  return read
    .select({ id, revision, itemId, form, lot, useBy, quantity, owner, lenderId, placeId, heldBecause })
    .from(stock)
    .where(
      and(
        only === null ? undefined : eq(stock.itemId, only.itemId),
        only?.empty ? eq(stock.quantity, 0) : gt(stock.quantity, 0),
      ),
    );
}

async function itemsOnShelf(read: Queries, only: { itemId: string } | null) {
  const rows = await read
    .select({ id: items.id, code: items.code, name: items.name, status: items.status, maker: makers.name })
    .from(items)
    .innerJoin(makers, eq(makers.id, items.makerId))
    .where(only === null ? undefined : eq(items.id, only.itemId));
  return new Map(rows.map((row) => [row.id, row]));
}

async function placesById(read: Queries) {
  const rows = await read.select({ id: places.id, name: places.name, metres: places.metres }).from(places);
  return new Map(rows.map((row) => [row.id, row]));
}
