import { and, desc, eq, isNotNull, isNull, lt, notInArray, or } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import { type MoveAct, moveAct } from '@/lib/pieces/move';
import { mayRead, type Reading } from '../../reader';
import { cases, deliveries, deliveryLines, people, pieceMoves, places, sets, stock } from '../../schema';
import { heapsHiddenFrom } from './blindHeaps';

/** One move of an item onto, off or between the shelves. */
export interface ShelfMove {
  seq: number;
  act: MoveAct;
  /** Against the shelves: more above zero, fewer below, 0 from shelf to shelf. */
  sign: 1 | 0 | -1;
  quantity: number;
  lot: string | null;
  from: string | null;
  to: string | null;
  caseId: string | null;
  reference: string | null;
  reason: string | null;
  delivery: string | null;
  by: string | null;
  at: string;
}

/**
 * The latest moves of an item that touch the shelves, newest first. Heaps the reader counts now are left out.
 *
 * @param before the number of a move: those before it
 */
export async function shelfMoves(
  db: Reading,
  itemId: string,
  limit: number,
  before: number | null = null,
): Promise<ShelfMove[]> {
  mayRead(db, 'readHospital');
  const [fromHeap, toHeap] = [alias(stock, 'from_heap'), alias(stock, 'to_heap')];
  const [fromPlace, toPlace] = [alias(places, 'from_place'), alias(places, 'to_place')];
  const hidden = [...(await heapsHiddenFrom(db))];
  const seen = (heap: typeof pieceMoves.fromStockId | typeof pieceMoves.toStockId) =>
    hidden.length === 0 ? undefined : or(isNull(heap), notInArray(heap, hidden));
  const rows = await db.read
    .select({
      move: pieceMoves,
      from: fromPlace.name,
      to: toPlace.name,
      toSet: sets.code,
      reference: cases.reference,
      delivery: deliveries.reference,
      by: people.name,
    })
    .from(pieceMoves)
    .leftJoin(fromHeap, eq(fromHeap.id, pieceMoves.fromStockId))
    .leftJoin(fromPlace, eq(fromPlace.id, fromHeap.placeId))
    .leftJoin(toHeap, eq(toHeap.id, pieceMoves.toStockId))
    .leftJoin(toPlace, eq(toPlace.id, toHeap.placeId))
    .leftJoin(sets, eq(sets.id, pieceMoves.toSetId))
    .leftJoin(cases, eq(cases.id, pieceMoves.caseId))
    .leftJoin(deliveryLines, eq(deliveryLines.id, pieceMoves.source))
    .leftJoin(deliveries, eq(deliveries.id, deliveryLines.deliveryId))
    .leftJoin(people, eq(people.id, pieceMoves.personId))
    .where(
      and(
        eq(pieceMoves.itemId, itemId),
        or(isNotNull(pieceMoves.fromStockId), isNotNull(pieceMoves.toStockId)),
        before === null ? undefined : lt(pieceMoves.seq, before),
        seen(pieceMoves.fromStockId),
        seen(pieceMoves.toStockId),
      ),
    )
    .orderBy(desc(pieceMoves.seq))
    .limit(limit);
  return rows.map(({ move, from, to, toSet, ...rest }) => ({
    ...rest,
    seq: move.seq,
    act: moveAct.parse(move.act),
    sign: move.fromStockId === null ? 1 : move.toStockId === null ? -1 : 0,
    quantity: move.quantity,
    lot: move.lot,
    from,
    to: to ?? toSet,
    caseId: move.caseId,
    reason: move.reason,
    at: move.doneAt,
  }));
}
