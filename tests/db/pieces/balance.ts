import { sql } from 'drizzle-orm';
import type { Database } from '@/db/client';

interface Unbalanced {
  what: string;
  journal: number;
  stands: number;
}

/**
 * Every heap and slot whose figure is not what the journal of pieces comes to. Slots of a set with a count under way are
 * left out: what was put in moves at once, what lies there is written when the count is closed.
 */
export async function unbalanced({ read }: Pick<Database, 'read'>): Promise<Unbalanced[]> {
  return read.all<Unbalanced>(sql`
    SELECT 'heap ' || stock.id AS what, stock.quantity AS stands,
      coalesce((SELECT sum(quantity) FROM piece_moves WHERE to_stock_id = stock.id), 0)
        - coalesce((SELECT sum(quantity) FROM piece_moves WHERE from_stock_id = stock.id), 0) AS journal
    FROM stock WHERE journal <> stands
    UNION ALL
    SELECT 'slot ' || held.set_id || ' ' || held.line_id, held.found, coalesce(holding.quantity, 0)
    FROM set_contents held LEFT JOIN slot_holdings holding USING (set_id, line_id)
    WHERE held.found <> coalesce(holding.quantity, 0)
      AND NOT EXISTS (SELECT 1 FROM bench_counts open WHERE open.set_id = held.set_id
        AND open.closed_at IS NULL AND open.abandoned_at IS NULL)
    UNION ALL
    SELECT 'holding ' || set_id || ' ' || line_id, quantity,
      coalesce((SELECT sum(quantity) FROM piece_moves WHERE to_set_id = holding.set_id AND to_line_id = holding.line_id), 0)
        - coalesce((SELECT sum(quantity) FROM piece_moves
            WHERE from_set_id = holding.set_id AND from_line_id = holding.line_id), 0) AS journal
    FROM slot_holdings holding WHERE journal <> quantity`);
}
