import { type SQL, sql } from 'drizzle-orm';
import type { SlotMove } from '@/lib/trace/slotMoves';
import type { Queries } from '../../client';
import { STANDS, STANDS_AS_LEFT } from './standing';

/** A slot of the item asked about, and the first moment at which a piece of the lot can have been in it. */
export interface SlotSince {
  setId: string;
  sinceAt: string;
}

const list = (slots: readonly SlotSince[]) =>
  JSON.stringify(slots.map(({ setId, sinceAt }) => [setId, sinceAt]));

/**
 * What came into some slots of an item and left them from a moment on, each slot from its own; in no order. `slot` is its
 * place in the list.
 */
export const movesSince = (itemId: string, slots: readonly SlotSince[]): SQL => sql`
  SELECT slot.key AS slot, seq, 'in' AS way, act, lot, quantity, NULL AS caseId, done_at AS doneAt
    FROM json_each(${list(slots)}) slot CROSS JOIN piece_moves INDEXED BY piece_moves_into_slot
    WHERE to_set_id = slot.value ->> 0 AND item_id = ${itemId} AND done_at >= slot.value ->> 1 AND act <> 'carried' ${STANDS}
  UNION ALL
  SELECT slot.key AS slot, seq, 'out' AS way, act, lot, quantity, case_id AS caseId, done_at AS doneAt
    FROM json_each(${list(slots)}) slot CROSS JOIN piece_moves INDEXED BY piece_moves_out_of_slot
    WHERE from_set_id = slot.value ->> 0 AND item_id = ${itemId} AND done_at >= slot.value ->> 1 AND act <> 'carried' ${STANDS_AS_LEFT}`;

/**
 * What lies in some slots of an item now, over every version of a configuration by which it may lie there, and from when on
 * their records say more than a count; in the order of the list.
 */
export const slotsNow = (itemId: string, slots: readonly SlotSince[]): SQL => sql`
  SELECT
      (SELECT coalesce(sum(held.quantity), 0)
        FROM configuration_lines line INDEXED BY configuration_lines_by_item
        CROSS JOIN slot_holdings held INDEXED BY slot_holdings_of_line
          ON held.line_id = line.id AND held.set_id = slot.value ->> 0
        WHERE line.item_id = ${itemId} AND held.quantity > 0) AS pieces,
      (SELECT since_at FROM slot_knots WHERE set_id = slot.value ->> 0 AND item_id = ${itemId}) AS knotAt
    FROM json_each(${list(slots)}) slot ORDER BY slot.key`;

/** The record of a slot since then, and what lay there; `null` where that is not enough to tell from, and all is read. */
export interface SlotRecord {
  setId: string;
  since: { moves: SlotMove[]; before: number } | null;
}

/**
 * Slots of an item, each from the moment on at which a piece of the lot can have been there: what lay there by then is told
 * by counting back from what lies there now. `lib/trace/sinceLotCame` says why that is enough, and where it is not.
 */
export function slotsSince(read: Queries, itemId: string, slots: readonly SlotSince[]): SlotRecord[] {
  if (slots.length === 0) return [];
  const nowThere = read.all(slotsNow(itemId, slots)) as { pieces: number; knotAt: string | null }[];
  const movesOf: SlotMove[][] = slots.map(() => []);
  for (const { slot, ...move } of read.all(movesSince(itemId, slots)) as (SlotMove & { slot: number })[])
    movesOf[slot]?.push(move);
  return slots.map(({ setId, sinceAt }, at) => {
    const moves = movesOf[at] ?? [];
    const { pieces = 0, knotAt = null } = nowThere[at] ?? {};
    const before = moves.reduce(
      (lay, { way, quantity }) => (way === 'in' ? lay - quantity : lay + quantity),
      pieces,
    );
    const isTied = knotAt !== null && knotAt < sinceAt;
    return { setId, since: isTied || before < 0 ? null : { moves, before } };
  });
}
