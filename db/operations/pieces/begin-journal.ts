import { sql } from 'drizzle-orm';
import type { Queries } from '../../client';

/**
 * Begins the journal of pieces with what lies on the shelf and in the slots of sets; in a slot nobody knows of which lot. For
 * a hospital that is loaded as a whole: `at` an ISO instant, `on` its day.
 */
export async function beginJournal(write: Queries, { at, on }: { at: string; on: string }): Promise<void> {
  await write.run(sql`
    INSERT INTO piece_moves (act, item_id, lot, use_by, quantity, owner, to_stock_id, unit_pence, done_on, done_at, entered_at)
    SELECT 'opening', heap.item_id, heap.lot, heap.use_by, heap.quantity, heap.owner, heap.id, item.unit_cost_pence,
      ${on}, ${at}, ${at}
    FROM stock heap JOIN items item ON item.id = heap.item_id WHERE heap.quantity > 0 ORDER BY heap.id`);
  await write.run(sql`
    INSERT INTO piece_moves (act, item_id, quantity, owner, to_set_id, to_line_id, unit_pence, done_on, done_at, entered_at)
    SELECT 'opening', line.item_id, held.found, 'ours', held.set_id, held.line_id, item.unit_cost_pence,
      ${on}, ${at}, ${at}
    FROM set_contents held JOIN configuration_lines line ON line.id = held.line_id
      JOIN items item ON item.id = line.item_id
    WHERE held.found > 0 ORDER BY held.set_id, held.line_id`);
  await knowEmptySlots(write);
}

/** Slots known to be empty are known to the journal too: a piece that turns up there is found, not what it began with. */
export async function knowEmptySlots(write: Queries): Promise<void> {
  await write.run(sql`
    INSERT INTO slot_holdings (set_id, line_id, quantity) SELECT set_id, line_id, 0 FROM set_contents WHERE found = 0
    ON CONFLICT (set_id, line_id) DO NOTHING`);
}
