import { sql } from 'drizzle-orm';
import type { SlotMove } from '@/lib/trace/slotMoves';
import type { Queries } from '../../client';
import { prepared } from '../../prepared';
import { STANDS, STANDS_AS_LEFT } from './standing';

/** Enough for most slots in one read; a longer history is read on page by page. */
const PAGE = 200;
/** After every moment. */
const END = '9999';

const put = (name: string) => sql.placeholder(name);
const ASKED = {
  setId: put('setId'),
  itemId: put('itemId'),
  beforeAt: put('beforeAt'),
  beforeSeq: put('beforeSeq'),
};

/**
 * A page of what came into the slot of an item in a set and left it, the latest first, before a moment and, of what was done
 * in that very moment, before a move. An item of a set is one slot, whichever of its lines it lies in: nobody keeps lots
 * apart between lines. What is only carried to another line is no move of the slot.
 */
const slotPage = prepared((read) => {
  const { setId, itemId, beforeAt, beforeSeq } = ASKED;
  return read
    .select({
      seq: sql<number>`seq`,
      way: sql<SlotMove['way']>`way`,
      act: sql<SlotMove['act']>`act`,
      lot: sql<string | null>`lot`,
      quantity: sql<number>`quantity`,
      caseId: sql<string | null>`caseId`,
      doneAt: sql<string>`doneAt`,
    })
    .from(sql`(
      SELECT seq, 'in' AS way, act, lot, quantity, NULL AS caseId, done_at AS doneAt
        FROM piece_moves INDEXED BY piece_moves_into_slot
        WHERE to_set_id = ${setId} AND item_id = ${itemId} AND (done_at, seq) < (${beforeAt}, ${beforeSeq})
          AND act <> 'carried' ${STANDS}
      UNION ALL
      SELECT seq, 'out' AS way, act, lot, quantity, case_id AS caseId, done_at AS doneAt
        FROM piece_moves INDEXED BY piece_moves_out_of_slot
        WHERE from_set_id = ${setId} AND item_id = ${itemId} AND (done_at, seq) < (${beforeAt}, ${beforeSeq})
          AND act <> 'carried' ${STANDS_AS_LEFT}
      ORDER BY doneAt DESC, seq DESC LIMIT ${PAGE})`)
    .prepare();
});

/** What lies in the slot now, by the journal. */
const slotHolds = prepared((read) =>
  read
    .select({ pieces: sql<number>`coalesce(sum(held.quantity), 0)` })
    .from(sql`slot_holdings held JOIN configuration_lines line ON line.id = held.line_id`)
    .where(sql`held.set_id = ${ASKED.setId} AND line.item_id = ${ASKED.itemId}`)
    .prepare(),
);

/**
 * The moves of a slot from the last time it was empty before a moment, in the order in which they were entered. Read
 * backwards from now, so that what happened earlier costs nothing.
 */
export function slotWindow(read: Queries, setId: string, itemId: string, reachesAt: string): SlotMove[] {
  let lying = slotHolds(read).get({ setId, itemId })?.pieces ?? 0;
  /** Explained, where what was not found is still to be met: until then the slot was not as empty as it looks. */
  let owed = 0;
  const moves: SlotMove[] = [];
  let before = { doneAt: END, seq: 0 };
  for (;;) {
    const page: SlotMove[] = slotPage(read).all({
      setId,
      itemId,
      beforeAt: before.doneAt,
      beforeSeq: before.seq,
    });
    for (const move of page) {
      if (move.doneAt < reachesAt && lying === 0 && owed === 0) return entered(moves);
      moves.push(move);
      lying -= move.way === 'in' ? move.quantity : -move.quantity;
      if (move.act === 'explained') owed += move.quantity;
      if (move.act === 'notFound') owed = Math.max(0, owed - move.quantity);
      before = move;
    }
    if (page.length < PAGE) return entered(moves);
  }
}

const entered = (moves: SlotMove[]) => moves.sort((a, b) => a.seq - b.seq);
