import { and, eq, inArray, isNull } from 'drizzle-orm';
import { type ItemId, itemId, type StockId, stockId } from '@/lib/identity/ids';
import { isPastUseBy, type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { lapsesOf } from '@/lib/sets/short/decision';
import type { Queries } from '../client';
import { packs, stock } from '../schema';
import { onShelf } from './shelf/onShelf';
import { presentDecisions } from './short/decisions';

/** Sterile packs of one item in store, as many as lie together. */
export interface SinglePack {
  stockId: StockId;
  itemId: ItemId;
  quantity: number;
  useBy: PlainDate | null;
  /** The one case it was let out for before the result of its load was known. */
  forCase: string | null;
  /** Sets that one of them travels with, by a decision in force; a set that takes two is there twice. */
  with: readonly string[];
}

/** Every pouch and sterile pack that is not held, with what it is meant for. Inside or outside a write. */
export async function singlePacks(read: Queries, now: string): Promise<SinglePack[]> {
  const [rows, decisions] = await Promise.all([
    read
      .select({
        stockId: stock.id,
        itemId: stock.itemId,
        quantity: stock.quantity,
        useBy: stock.useBy,
        forCase: packs.forCaseId,
      })
      .from(stock)
      .leftJoin(packs, eq(packs.stockId, stock.id))
      .where(and(inArray(stock.form, ['pouch', 'sterilePacked']), onShelf, isNull(stock.heldBecause))),
    presentDecisions(read),
  ]);
  const sent = new Map<string, string[]>();
  for (const [set, { decision, named }] of decisions) {
    if (lapsesOf(decision, named, now).length > 0) continue;
    for (const { from } of decision.substitutes)
      if (from.kind === 'pouch') sent.set(from.stockId, [...(sent.get(from.stockId) ?? []), set]);
  }
  return rows.map((row) => ({
    stockId: stockId.parse(row.stockId),
    itemId: itemId.parse(row.itemId),
    quantity: row.quantity,
    useBy: row.useBy === null ? null : plainDate.parse(row.useBy),
    forCase: row.forCase,
    with: sent.get(row.stockId) ?? [],
  }));
}

/** Pieces in packs that are in date on a day and free for a set and a case: what is meant for another is not there. */
export function piecesInDate(
  all: readonly SinglePack[],
  on: PlainDate,
  { setId, forCase }: { setId: string | null; forCase: string | null },
): Map<ItemId, number> {
  const pieces = new Map<ItemId, number>();
  for (const { itemId: id, quantity, useBy, forCase: meant, with: sent } of all) {
    if ((useBy !== null && isPastUseBy(useBy, on)) || (meant !== null && meant !== forCase)) continue;
    const left = quantity - sent.filter((one) => one !== setId).length;
    if (left > 0) pieces.set(id, (pieces.get(id) ?? 0) + left);
  }
  return pieces;
}
