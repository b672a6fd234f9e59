import { eq, inArray, sql } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import type { PlainDate } from '@/lib/quantities/plainDate';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { items, supplyOrderLines, supplyOrderParts, supplyOrders } from '../../schema';

/** Pieces of one line of an order that came and lie on one heap. */
export interface PartThatCame {
  orderLineId: string;
  quantity: number;
  lot: string | null;
  useBy: PlainDate | null;
  placeId: string;
  stockId: string;
}

export type OrderedLine = Awaited<ReturnType<typeof orderedLines>>[number];

/** Lines of an order, or lines by their ids, each with what came of it so far. */
export function orderedLines(write: Queries, of: { orderId: string } | { lineIds: readonly string[] }) {
  return write
    .select({
      id: supplyOrderLines.id,
      orderId: supplyOrderLines.orderId,
      orderState: supplyOrders.state,
      itemId: supplyOrderLines.itemId,
      name: items.name,
      status: items.status,
      suppliedSterile: items.suppliedSterile,
      ordered: supplyOrderLines.ordered,
      unitPence: supplyOrderLines.unitPence,
      here: sql<number>`(SELECT coalesce(sum(part.quantity), 0) FROM ${supplyOrderParts} part WHERE part.order_line_id = ${supplyOrderLines.id})`,
    })
    .from(supplyOrderLines)
    .innerJoin(supplyOrders, eq(supplyOrders.id, supplyOrderLines.orderId))
    .innerJoin(items, eq(items.id, supplyOrderLines.itemId))
    .where(
      'orderId' in of
        ? eq(supplyOrderLines.orderId, of.orderId)
        : inArray(supplyOrderLines.id, [...of.lineIds]),
    );
}

/**
 * Counts what came to an order that is open: its parts, its next revision, its end where nothing more is to come, and the entry in
 * the ledger that says so. The pieces themselves are on their heaps already. Gives what is still to come.
 */
export async function countToOrder(
  write: Queries,
  {
    orderId,
    parts,
    ...by
  }: { orderId: string; parts: readonly PartThatCame[]; now: string; newId: NewId; person: Person },
): Promise<{ revision: number; toCome: number }> {
  const { now, newId, person } = by;
  const at = { doneAt: now, enteredAt: now };
  await write
    .insert(supplyOrderParts)
    .values(parts.map((part) => ({ id: newId('orderPart'), ...part, personId: person.id, ...at })));
  const [order] = await write.select().from(supplyOrders).where(eq(supplyOrders.id, orderId));
  if (!order) throw new Error('the order was looked up before');
  const lines = await orderedLines(write, { orderId });
  const toCome = lines.reduce((sum, { ordered, here }) => sum + ordered - here, 0);
  const revision = order.revision + 1;
  const isOver = toCome === 0;
  await write
    .update(supplyOrders)
    .set({ revision, ...(isOver ? { state: 'closed', closedBy: person.id, closedAt: now } : {}) })
    .where(eq(supplyOrders.id, orderId));
  await appendLedger(write, {
    ...at,
    personId: person.id,
    action: 'receive-order',
    subjectKind: 'order',
    subjectId: orderId,
    detail: {
      number: order.number,
      placeId: parts[0]?.placeId ?? null,
      parts: parts.map(({ orderLineId, quantity, lot, useBy, stockId }) => ({
        ...{ orderLineId, quantity, lot, useBy, stockId },
      })),
      toCome,
      closed: isOver,
    },
  });
  return { revision, toCome };
}
