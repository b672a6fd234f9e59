import { sql } from 'drizzle-orm';
import type { MoveAct } from '@/lib/pieces/move';
import {
  isEarlierNeeded,
  type LotMove,
  type LotSlot,
  type LotTrace,
  lotFirstHere,
  lotTrace,
} from '@/lib/trace/lotTrace';
import type { Queries } from '../../client';
import { prepared } from '../../prepared';
import { slotsSince } from './slotsSince';
import { slotWindow } from './slotWindow';
import { STANDS } from './standing';

const put = (name: string) => sql.placeholder(name);

/** Every move that names a lot of an item. */
const movesOfLot = prepared((read) =>
  read
    .select({
      act: sql<MoveAct>`act`,
      quantity: sql<number>`quantity`,
      fromStockId: sql<string | null>`from_stock_id`,
      fromSetId: sql<string | null>`from_set_id`,
      toStockId: sql<string | null>`to_stock_id`,
      toSetId: sql<string | null>`to_set_id`,
      caseId: sql<string | null>`case_id`,
      pickId: sql<string | null>`pick_id`,
      doneAt: sql<string>`done_at`,
    })
    .from(sql`piece_moves INDEXED BY piece_moves_by_lot`)
    .where(sql`lot = ${put('lot')} AND item_id = ${put('itemId')} ${STANDS}`)
    .orderBy(sql`seq`)
    .prepare(),
);

/**
 * Sets into whose slots pieces of unknown lot came since the lot was first here, any of which may be of it, and when the
 * first did.
 */
const unknownLotSlots = prepared((read) =>
  read
    .select({ setId: sql<string>`to_set_id`, sinceAt: sql<string>`min(done_at)` })
    .from(sql`piece_moves INDEXED BY piece_moves_of_unknown_lot`)
    .where(
      sql`item_id = ${put('itemId')} AND done_at >= ${put('sinceAt')} AND lot IS NULL AND to_set_id IS NOT NULL
        AND act IN ('opening', 'refilled', 'found', 'explained')`,
    )
    .groupBy(sql`to_set_id`)
    .prepare(),
);

/** A lot as far as its facts tell, and the sets it never came into by any record, with pieces whose lot nobody knows. */
export interface LotOnRecord {
  trace: LotTrace;
  unknownLots: string[];
}

/**
 * Where a lot has gone; `null` where it never was here. Inside or outside a write. It reads as much as the lot and the slots
 * it lay in have moved since, not as there is; the whole of a slot only where its records don't add up, or where what lay
 * there earlier decides.
 */
export function lotOnRecord(read: Queries, itemId: string, lot: string): LotOnRecord | null {
  const moves: LotMove[] = movesOfLot(read).all({ itemId, lot });
  if (moves.length === 0) return null;
  const unknown = unknownLotSlots(read).all({ itemId, sinceAt: lotFirstHere(moves) ?? '' });
  const firstIn = new Map<string, string>();
  const note = (setId: string | null, at: string) => {
    if (setId !== null && at < (firstIn.get(setId) ?? END)) firstIn.set(setId, at);
  };
  for (const { fromSetId, toSetId, doneAt } of moves) {
    note(toSetId, doneAt);
    note(fromSetId, doneAt);
  }
  const unknownLots = unknown.map(({ setId }) => setId).filter((setId) => !firstIn.has(setId));
  for (const { setId, sinceAt } of unknown) if (firstIn.has(setId)) note(setId, sinceAt);

  const whole = (setId: string) => ({
    setId,
    moves: slotWindow(read, setId, itemId, firstIn.get(setId) ?? END),
    before: 0,
    isWhole: true,
  });
  const slots = slotsSince(
    read,
    itemId,
    [...firstIn].map(([setId, sinceAt]) => ({ setId, sinceAt })),
  ).map(
    ({ setId, since }): LotSlot =>
      since === null || isEarlierNeeded(since.moves, lot)
        ? whole(setId)
        : { setId, ...since, isWhole: false },
  );
  const trace = lotTrace({ lot, moves, slots });
  if (trace.inDoubt.length === 0) return { trace, unknownLots };
  const inDoubt = new Set(trace.inDoubt);
  const known = slots.map((slot) => (inDoubt.has(slot.setId) ? whole(slot.setId) : slot));
  return { trace: lotTrace({ lot, moves, slots: known }), unknownLots };
}

/** After every moment. */
const END = '9999';
