import { eq, sql } from 'drizzle-orm';
import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { textProblems } from '@/lib/plans/checkConstruct';
import { closingEntry } from '@/lib/restock/entries';
import { restockActWords as words } from '@/lib/wording/restock-acts';
import { appendLedger } from '../../ledger';
import { supplyOrderLines, supplyOrderParts, supplyOrders } from '../../schema';
import { type AtOrder, atOrder, type StandsNow } from './at-restock';

/** Closes an order: nothing more is expected of it. Where not all came, it says why. */
export async function closeOrder(request: AtOrder): Promise<Outcome<{ revision: number }, StandsNow>> {
  const parsed = closingEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { because } = parsed.data;
  const { now, person } = request;
  return atOrder(request, async (write, { id, number, revision }) => {
    const lines = await write
      .select({
        itemId: supplyOrderLines.itemId,
        toCome: sql<number>`${supplyOrderLines.ordered} - coalesce(sum(${supplyOrderParts.quantity}), 0)`,
      })
      .from(supplyOrderLines)
      .leftJoin(supplyOrderParts, eq(supplyOrderParts.orderLineId, supplyOrderLines.id))
      .where(eq(supplyOrderLines.orderId, id))
      .groupBy(supplyOrderLines.id);
    const notCome = lines.filter(({ toCome }) => toCome > 0);
    if (notCome.length > 0 && because === null)
      return refusedFor([{ path: ['because'], code: 'no-reason', message: words.whyNotAll(number) }]);
    const problems = because === null ? [] : textProblems(because, ['because']);
    if (problems.length > 0) return refusedFor(problems);
    await write
      .update(supplyOrders)
      .set({
        state: 'closed',
        closedBy: person.id,
        closedAt: now,
        closedBecause: because,
        revision: revision + 1,
      })
      .where(eq(supplyOrders.id, id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'close-order',
      subjectKind: 'order',
      subjectId: id,
      detail: { number, because, notCome },
    });
    return { ok: true, value: { revision: revision + 1 } };
  });
}
