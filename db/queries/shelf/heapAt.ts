import { and, eq, inArray, isNull, sql } from 'drizzle-orm';
import { stockId } from '@/lib/identity/ids';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { freeOf, type HeapFacts } from '@/lib/stock/firstOut';
import type { Queries } from '../../client';
import { items, packs, pieceMoves, places, recalls, stock } from '../../schema';
import { onKits } from '../caseLife/standing';
import { promisedPouches } from '../short/decisions';

export type HeapRow = typeof stock.$inferSelect;

/** One heap with all that decides what may be done with it. */
export interface HeapAt {
  row: HeapRow;
  facts: HeapFacts;
  itemName: string;
  placeName: string;
  free: number;
  /** Labelled pouches in it that are sterile. */
  labels: { packId: string; number: string }[];
}

/** Heaps by id, inside or outside a write; unknown ids are left out. */
export async function heapsAt(read: Queries, ids: readonly string[], now: string): Promise<HeapAt[]> {
  if (ids.length === 0) return [];
  const [rows, kits, travelling, labels] = await Promise.all([
    read
      .select({ row: stock, name: items.name, status: items.status, place: places })
      .from(stock)
      .innerJoin(items, eq(items.id, stock.itemId))
      .innerJoin(places, eq(places.id, stock.placeId))
      .where(inArray(stock.id, [...ids])),
    onKits(read),
    promisedPouches(read, now),
    read
      .select({ packId: packs.id, number: packs.number, stockId: packs.stockId })
      .from(packs)
      .where(and(inArray(packs.stockId, [...ids]), eq(packs.state, 'sterile'))),
  ]);
  return rows.map(({ row, name, status, place }) => {
    const id = stockId.parse(row.id);
    const facts: HeapFacts = {
      stockId: id,
      useBy: row.useBy === null ? null : plainDate.parse(row.useBy),
      metres: place.metres,
      quantity: row.quantity,
      onKits: kits.get(id) ?? 0,
      travelling: travelling.get(id) ?? 0,
      heldBecause: row.heldBecause,
      status: status === 'recalled' ? 'recalled' : status === 'withdrawn' ? 'withdrawn' : 'current',
    };
    return {
      row,
      facts,
      itemName: name,
      placeName: place.name,
      free: freeOf(facts),
      labels: labels
        .filter((label) => label.stockId === id && row.quantity > 0)
        .map(({ packId, number }) => ({ packId, number })),
    };
  });
}

export async function heapAt(read: Queries, id: string, now: string): Promise<HeapAt | null> {
  return (await heapsAt(read, [id], now))[0] ?? null;
}

/** How far the journal of pieces goes at this moment. */
export async function journalEnd(read: Queries): Promise<number> {
  const [row] = await read.select({ seq: sql<number | null>`max(${pieceMoves.seq})` }).from(pieceMoves);
  return row?.seq ?? 0;
}

/**
 * Whether a lot of an item is under a recall: one that is open names it or all of the item, or some of it is held for one,
 * wherever it lies. `lot` `null`: nobody knows, so only a recall of the whole item reaches it.
 */
export async function lotsUnderRecall(
  read: Queries,
  itemIds: readonly string[],
): Promise<(itemId: string, lot: string | null) => boolean> {
  const [held, open] = await Promise.all([
    read
      .select({ itemId: stock.itemId, lot: stock.lot })
      .from(stock)
      .where(and(inArray(stock.itemId, [...itemIds]), eq(stock.heldBecause, 'recall'))),
    openRecallsOf(read, itemIds),
  ]);
  return (itemId, lot) =>
    open.some((one) => one.itemId === itemId && (one.lot === null || one.lot === lot)) ||
    (lot !== null && held.some((one) => one.itemId === itemId && one.lot === lot));
}

/** Recalls under way of these items; `lot` `null`: of all of the item. A rehearsal holds nothing back. */
export async function openRecallsOf(
  read: Queries,
  itemIds: readonly string[],
): Promise<{ itemId: string; lot: string | null; number: string }[]> {
  const rows = await read
    .select({ itemId: recalls.itemId, lot: recalls.lot, number: recalls.number })
    .from(recalls)
    .where(
      and(
        inArray(recalls.itemId, [...itemIds]),
        inArray(recalls.kind, ['lot', 'item']),
        isNull(recalls.closedAt),
        eq(recalls.isRehearsal, false),
      ),
    );
  return rows.map((row) => ({ ...row, itemId: row.itemId ?? '' }));
}

export const lotKey = (itemId: string, lot: string): string => `${itemId} ${lot}`;

/** Use-bys on record for lots of these items. */
export async function datesOfLots(
  read: Queries,
  itemIds: readonly string[],
): Promise<Map<string, (PlainDate | null)[]>> {
  const byLot = new Map<string, (PlainDate | null)[]>();
  if (itemIds.length === 0) return byLot;
  const rows = await read
    .selectDistinct({ itemId: stock.itemId, lot: stock.lot, useBy: stock.useBy })
    .from(stock)
    .where(inArray(stock.itemId, [...itemIds]));
  for (const { itemId, lot, useBy } of rows) {
    if (lot === null) continue;
    const key = lotKey(itemId, lot);
    byLot.set(key, [...(byLot.get(key) ?? []), useBy === null ? null : plainDate.parse(useBy)]);
  }
  return byLot;
}
