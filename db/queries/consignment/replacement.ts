import { sql } from 'drizzle-orm';
import { type Coming, type ReplacementEvent, stillToCome } from '@/lib/consignment/replacement';
import { groupBy } from '@/lib/lists/groupBy';
import type { Queries } from '../../client';

interface Row {
  lenderId: string;
  itemId: string;
  kind: 'asked' | 'came' | 'settled';
  at: string;
  /** Its number. */
  usageOrder: string | null;
  pieces: number;
}

/** What of each item its owner was asked to replace and has not, by usage order. */
export function replacementsToCome(read: Queries): Map<string, Coming[]> {
  const rows = read.all<Row>(sql`
    WITH asked AS (
      SELECT o.lender_id, line.item_id, o.number, o.approved_at, o.settled_at, sum(line.pieces) AS pieces
      FROM usage_orders o JOIN usage_order_lines line ON line.order_id = o.id
      WHERE o.state IN ('approved', 'sent') AND line.way = 'used' AND line."replace" = 1 GROUP BY o.id, line.item_id)
    SELECT lender_id AS lenderId, item_id AS itemId, 'asked' AS kind, approved_at AS at, number AS usageOrder, pieces FROM asked
    UNION ALL
    SELECT lender_id, item_id, 'settled', settled_at, number, pieces FROM asked WHERE settled_at IS NOT NULL
    UNION ALL
    SELECT heap.lender_id, heap.item_id, 'came', move.entered_at, NULL, move.quantity
    FROM (SELECT lender_id, item_id, min(approved_at) AS first FROM asked GROUP BY 1, 2) waits
      JOIN stock heap ON heap.lender_id = waits.lender_id AND heap.item_id = waits.item_id
      JOIN piece_moves move INDEXED BY piece_moves_onto_heap ON move.to_stock_id = heap.id
    WHERE move.act = 'received' AND move.reason IS NOT 'enteredWrongly' AND move.entered_at >= waits.first`);
  const coming = new Map<string, Coming[]>();
  for (const own of groupBy(rows, ({ lenderId, itemId }) => `${lenderId} ${itemId}`).values()) {
    const itemId = own[0]?.itemId ?? '';
    const events = own.map(({ kind, at, usageOrder, pieces }): ReplacementEvent => {
      if (kind === 'came') return { kind, at, pieces };
      return kind === 'settled'
        ? { kind, at, order: usageOrder ?? '' }
        : { kind, at, order: usageOrder ?? '', pieces };
    });
    const left = stillToCome(events);
    if (left.length > 0) coming.set(itemId, [...(coming.get(itemId) ?? []), ...left]);
  }
  return coming;
}
