import { sql } from 'drizzle-orm';
import type { MoveAct } from '@/lib/pieces/move';
import type { SlotMove } from '@/lib/trace/slotMoves';
import type { Queries } from '../../client';
import { prepared } from '../../prepared';
import { STANDS, STANDS_AS_LEFT } from './standing';

/** A slot of the item asked about, and the first moment at which a piece of the lot can have been in it. */
export interface SlotSince {
  setId: string;
  sinceAt: string;
}

const list = (slots: readonly SlotSince[]) =>
  JSON.stringify(slots.map(({ setId, sinceAt }) => [setId, sinceAt]));

const itemAsked = sql.placeholder('itemId');

/**
 * What came into some slots of an item and left them from a moment on, each slot from its own; what lies there now, over every
 * version of a configuration by which it may lie there; and from when on their records say more than a count. A row for each
 * slot, in the order of the list, with its moves as one text: a row for each move would take longer than all the rest.
 */
const slotsTold = prepared((read) =>
  read
    .select({
      came: sql<string>`(SELECT json_group_array(json_array(seq, act, lot, quantity, done_at))
        FROM piece_moves INDEXED BY piece_moves_into_slot
        WHERE to_set_id = slot.value ->> 0 AND item_id = ${itemAsked} AND done_at >= slot.value ->> 1
          AND act <> 'carried' ${STANDS})`,
      went: sql<string>`(SELECT json_group_array(json_array(seq, act, lot, quantity, done_at, case_id))
        FROM piece_moves INDEXED BY piece_moves_out_of_slot
        WHERE from_set_id = slot.value ->> 0 AND item_id = ${itemAsked} AND done_at >= slot.value ->> 1
          AND act <> 'carried' ${STANDS_AS_LEFT})`,
      pieces: sql<number>`(SELECT coalesce(sum(held.quantity), 0)
        FROM configuration_lines line INDEXED BY configuration_lines_by_item
        CROSS JOIN slot_holdings held INDEXED BY slot_holdings_of_line
          ON held.line_id = line.id AND held.set_id = slot.value ->> 0
        WHERE line.item_id = ${itemAsked} AND held.quantity > 0)`,
      knotAt: sql<
        string | null
      >`(SELECT since_at FROM slot_knots WHERE set_id = slot.value ->> 0 AND item_id = ${itemAsked})`,
    })
    .from(sql`json_each(${sql.placeholder('slots')}) slot`)
    .orderBy(sql`slot.key`)
    .prepare(),
);

type MoveTold = [
  seq: number,
  act: MoveAct,
  lot: string | null,
  quantity: number,
  doneAt: string,
  caseId?: string | null,
];

const movesIn = (text: string, way: SlotMove['way']): SlotMove[] =>
  (JSON.parse(text) as MoveTold[]).map((told) => ({
    seq: told[0],
    way,
    act: told[1],
    lot: told[2],
    quantity: told[3],
    caseId: told[5] ?? null,
    doneAt: told[4],
  }));

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
  const told = slotsTold(read).all({ itemId, slots: list(slots) });
  return told.map(({ came, went, pieces, knotAt }, at) => {
    const { setId = '', sinceAt = '' } = slots[at] ?? {};
    if (knotAt !== null && knotAt < sinceAt) return { setId, since: null };
    const moves = movesIn(came, 'in').concat(movesIn(went, 'out'));
    let before = pieces;
    for (const { way, quantity } of moves) before += way === 'in' ? -quantity : quantity;
    return { setId, since: before < 0 ? null : { moves, before } };
  });
}
