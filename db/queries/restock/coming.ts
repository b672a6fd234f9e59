import { and, asc, eq, sql } from 'drizzle-orm';
import { groupBy } from '@/lib/lists/groupBy';
import type { Queries } from '../../client';
import { supplyOrderLines, supplyOrderParts, supplyOrders } from '../../schema';

/** Pieces of one item still to come of one order. */
export interface CaseOrder {
  orderId: string;
  number: string;
  toCome: number;
  /** `null`: nobody knows when. */
  expectedOn: string | null;
}

/** What is still to come of open orders, by item. */
export async function openOrdersOf(read: Queries): Promise<Map<string, CaseOrder[]>> {
  const rows = await read
    .select({
      itemId: supplyOrderLines.itemId,
      orderId: supplyOrders.id,
      number: supplyOrders.number,
      expectedOn: supplyOrders.expectedOn,
      toCome: sql<number>`${supplyOrderLines.ordered} - (SELECT coalesce(sum(part.quantity), 0) FROM ${supplyOrderParts} part WHERE part.order_line_id = ${supplyOrderLines.id})`,
    })
    .from(supplyOrderLines)
    .innerJoin(supplyOrders, eq(supplyOrders.id, supplyOrderLines.orderId))
    .where(eq(supplyOrders.state, 'open'));
  const toCome = rows.filter((row) => row.toCome > 0);
  return new Map(
    [...groupBy(toCome, ({ itemId }) => itemId)].map(([id, all]) => [
      id,
      all.map(({ itemId, ...order }) => order),
    ]),
  );
}

/** Lines of open orders of one item of which some is still to come, the oldest order first. */
export async function linesOnOrder(
  read: Queries,
  itemId: string,
): Promise<{ orderLineId: string; number: string; toCome: number; expectedOn: string | null }[]> {
  const rows = await read
    .select({
      orderLineId: supplyOrderLines.id,
      number: supplyOrders.number,
      expectedOn: supplyOrders.expectedOn,
      toCome: sql<number>`${supplyOrderLines.ordered} - (SELECT coalesce(sum(part.quantity), 0) FROM ${supplyOrderParts} part WHERE part.order_line_id = ${supplyOrderLines.id})`,
    })
    .from(supplyOrderLines)
    .innerJoin(supplyOrders, eq(supplyOrders.id, supplyOrderLines.orderId))
    .where(and(eq(supplyOrders.state, 'open'), eq(supplyOrderLines.itemId, itemId)))
    .orderBy(asc(supplyOrders.number));
  return rows.filter(({ toCome }) => toCome > 0);
}
