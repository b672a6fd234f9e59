import { inArray } from 'drizzle-orm';
import type { MoveAct } from '@/lib/pieces/move';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import { items, moveReasons, pieceMoves } from '../../schema';

/** A line of a set. */
export interface Slot {
  setId: string;
  lineId: string;
}

/** One move, as the operation that makes it knows it; `doneAt` as an ISO instant. */
export interface Move {
  act: MoveAct;
  itemId: string;
  /** As it was read, or as the heap has it; `null` where nobody knows. */
  lot: string | null;
  useBy: string | null;
  quantity: number;
  owner?: 'ours' | 'consignment';
  from?: { stockId: string } | Slot;
  to?: { stockId: string } | Slot;
  caseId?: string | null;
  pickId?: string | null;
  asideId?: string | null;
  packId?: string | null;
  reason?: string | null;
  /** The hospital's own reason, of what was wasted. */
  reasonId?: string | null;
  /** The entry, count, delivery … it came of. */
  source?: string | null;
  /** The price of one piece then; the catalogue's where it is not told. */
  unitPence?: number | null;
  personId: string | null;
  doneAt: string;
  enteredAt: string;
}

const ROWS_AT_A_TIME = 400;

/**
 * Writes moves into the journal of pieces, inside the caller's transaction. It moves nothing itself: the heap's figure is
 * the caller's (`heaps.ts`), the slot's holding is kept by the database, which refuses to let a slot hold less than nothing.
 */
export async function recordMoves(write: Queries, moves: readonly Move[]): Promise<void> {
  const rows = moves.filter(({ quantity }) => quantity > 0);
  if (rows.length === 0) return;
  const unpriced = [
    ...new Set(rows.flatMap(({ itemId, unitPence }) => (unitPence === undefined ? [itemId] : []))),
  ];
  const prices = new Map<string, number | null>();
  for (let at = 0; at < unpriced.length; at += ROWS_AT_A_TIME) {
    const some = await write
      .select({ id: items.id, unitCostPence: items.unitCostPence })
      .from(items)
      .where(inArray(items.id, unpriced.slice(at, at + ROWS_AT_A_TIME)));
    for (const { id, unitCostPence } of some) prices.set(id, unitCostPence);
  }
  const written = rows.map(({ from, to, owner = 'ours', unitPence, reasonId: _beside, ...move }) => ({
    ...move,
    owner,
    unitPence: unitPence === undefined ? (prices.get(move.itemId) ?? null) : unitPence,
    doneOn: wallClock(move.doneAt).date,
    fromStockId: from && 'stockId' in from ? from.stockId : null,
    fromSetId: from && 'setId' in from ? from.setId : null,
    fromLineId: from && 'setId' in from ? from.lineId : null,
    toStockId: to && 'stockId' in to ? to.stockId : null,
    toSetId: to && 'setId' in to ? to.setId : null,
    toLineId: to && 'setId' in to ? to.lineId : null,
  }));
  if (rows.some(({ reasonId }) => reasonId != null)) return withReasons(write, rows, written);
  for (let at = 0; at < written.length; at += ROWS_AT_A_TIME)
    await write.insert(pieceMoves).values(written.slice(at, at + ROWS_AT_A_TIME));
}

/** One by one, so that each reason stands beside its own move. */
async function withReasons(
  write: Queries,
  moves: readonly Move[],
  written: readonly (typeof pieceMoves.$inferInsert)[],
): Promise<void> {
  for (const [at, row] of written.entries()) {
    const [made] = await write.insert(pieceMoves).values(row).returning({ seq: pieceMoves.seq });
    const { reasonId = null, personId, enteredAt } = moves[at] ?? {};
    if (made && reasonId !== null && personId != null && enteredAt !== undefined)
      await write.insert(moveReasons).values({ moveSeq: made.seq, reasonId, personId, enteredAt });
  }
}
