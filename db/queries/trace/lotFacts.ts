import { type SQL, sql } from 'drizzle-orm';
import {
  isEarlierNeeded,
  type LotMove,
  type LotSlot,
  type LotTrace,
  lotFirstHere,
  lotTrace,
} from '@/lib/trace/lotTrace';
import type { Queries } from '../../client';
import { slotsSince } from './slotsSince';
import { slotWindow } from './slotWindow';
import { STANDS } from './standing';

/** Every move that names a lot of an item. */
export const movesOfLot = (itemId: string, lot: string): SQL => sql`
  SELECT act, quantity, from_stock_id AS fromStockId, from_set_id AS fromSetId, to_stock_id AS toStockId,
      to_set_id AS toSetId, case_id AS caseId, pick_id AS pickId, done_at AS doneAt
    FROM piece_moves INDEXED BY piece_moves_by_lot
    WHERE lot = ${lot} AND item_id = ${itemId} ${STANDS} ORDER BY seq`;

/**
 * Sets into whose slots pieces of unknown lot came since the lot was first here, any of which may be of it, and when the
 * first did.
 */
export const unknownLotSlots = (itemId: string, sinceAt: string): SQL => sql`
  SELECT move.to_set_id AS setId, min(move.done_at) AS sinceAt
    FROM piece_moves move INDEXED BY piece_moves_of_unknown_lot
    WHERE move.item_id = ${itemId} AND move.done_at >= ${sinceAt} AND move.lot IS NULL AND move.to_set_id IS NOT NULL
      AND move.act IN ('opening', 'refilled', 'found', 'explained')
    GROUP BY move.to_set_id`;

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
  const moves = read.all(movesOfLot(itemId, lot)) as LotMove[];
  if (moves.length === 0) return null;
  const unknown = read.all(unknownLotSlots(itemId, lotFirstHere(moves) ?? '')) as {
    setId: string;
    sinceAt: string;
  }[];
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
