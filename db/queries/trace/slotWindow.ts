import { type SQL, sql } from 'drizzle-orm';
import { z } from 'zod';
import { moveAct } from '@/lib/pieces/move';
import type { SlotMove } from '@/lib/trace/slotMoves';
import type { Queries } from '../../client';
import { STANDS } from './standing';

const row = z.object({
  seq: z.number(),
  way: z.enum(['in', 'out']),
  act: moveAct,
  lot: z.string().nullable(),
  quantity: z.number(),
  caseId: z.string().nullable(),
  doneAt: z.string(),
});

/** Enough for most slots in one read; a longer history is read on page by page. */
const PAGE = 200;

/**
 * A page of what came into the slot of an item in a set and left it, the newest first. An item of a set is one slot,
 * whichever of its lines it lies in: nobody keeps lots apart between lines. What is only carried to another line is no
 * move of the slot.
 */
export const slotPage = (setId: string, itemId: string, beforeSeq: number): SQL => sql`
  SELECT seq, 'in' AS way, act, lot, quantity, case_id AS caseId, done_at AS doneAt
    FROM piece_moves INDEXED BY piece_moves_into_slot
    WHERE to_set_id = ${setId} AND item_id = ${itemId} AND seq < ${beforeSeq} AND act <> 'carried' ${STANDS}
  UNION ALL
  SELECT seq, 'out' AS way, act, lot, quantity, case_id AS caseId, done_at AS doneAt
    FROM piece_moves INDEXED BY piece_moves_out_of_slot
    WHERE from_set_id = ${setId} AND item_id = ${itemId} AND seq < ${beforeSeq} AND act <> 'carried' ${STANDS}
  ORDER BY seq DESC LIMIT ${PAGE}`;

/** What lies in the slot now, by the journal. */
export const slotHolds = (setId: string, itemId: string): SQL => sql`
  SELECT coalesce(sum(held.quantity), 0) AS pieces
    FROM slot_holdings held JOIN configuration_lines line ON line.id = held.line_id
    WHERE held.set_id = ${setId} AND line.item_id = ${itemId}`;

/**
 * The moves of a slot from the last time it was empty before `reachesSeq` (a move of its own), in the order in which they
 * were entered. Read backwards from now, so that what happened earlier costs nothing.
 */
export function slotWindow(read: Queries, setId: string, itemId: string, reachesSeq: number): SlotMove[] {
  const [holds] = read.all(slotHolds(setId, itemId)) as { pieces: number }[];
  let lying = holds?.pieces ?? 0;
  const moves: SlotMove[] = [];
  let before = Number.MAX_SAFE_INTEGER;
  for (;;) {
    const page = z.array(row).parse(read.all(slotPage(setId, itemId, before)));
    for (const move of page) {
      if (move.seq < reachesSeq && lying === 0) return moves.reverse();
      moves.push(move);
      lying -= move.way === 'in' ? move.quantity : -move.quantity;
      before = move.seq;
    }
    if (page.length < PAGE) return moves.reverse();
  }
}
