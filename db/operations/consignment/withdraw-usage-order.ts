import { and, eq, inArray } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { textProblems } from '@/lib/plans/checkConstruct';
import { consignmentWords as words } from '@/lib/wording/consignment';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { usageOrderLines, usageOrders } from '../../schema';
import { type AtUsageOrder, atUsageOrder, type StandsNow } from './at-usage-order';

/** Withdraws a usage order that was not sent: it stays on record, and what it told of waits for the next one. */
export async function withdrawUsageOrder(
  request: AtUsageOrder & { because: string },
): Promise<Outcome<{ revision: number }, StandsNow>> {
  const { now, person, because } = request;
  const problems = textProblems(because, ['because']);
  if (problems.length > 0) return refusedFor(problems);
  return atUsageOrder(request, 'makeUsageOrder', async (write, { id, number, state, revision }) => {
    if (state !== 'made' && state !== 'approved')
      return refused('frozen', words.sentAlready(number), { revision, state });
    if (await takenBackLater(write, id))
      return refused('frozen', words.takenBackLater(number), { revision, state });
    await write
      .update(usageOrders)
      .set({
        state: 'withdrawn',
        withdrawnBy: person.id,
        withdrawnAt: now,
        withdrawnBecause: because,
        revision: revision + 1,
      })
      .where(eq(usageOrders.id, id));
    await write.update(usageOrderLines).set({ withdrawn: true }).where(eq(usageOrderLines.orderId, id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'withdraw-usage-order',
      subjectKind: 'usageOrder',
      subjectId: id,
      detail: { number, because },
    });
    return { ok: true, value: { revision: revision + 1 } };
  });
}

/** Whether another order that stands takes back what this one told of. */
async function takenBackLater(write: Queries, id: string): Promise<boolean> {
  const own = await write
    .select({ seq: usageOrderLines.moveSeq })
    .from(usageOrderLines)
    .where(and(eq(usageOrderLines.orderId, id), eq(usageOrderLines.way, 'used')));
  const later = await write
    .select({ orderId: usageOrderLines.orderId })
    .from(usageOrderLines)
    .where(
      and(
        inArray(
          usageOrderLines.moveSeq,
          own.map(({ seq }) => seq),
        ),
        eq(usageOrderLines.way, 'takenBack'),
        eq(usageOrderLines.withdrawn, false),
      ),
    );
  return later.some(({ orderId }) => orderId !== id);
}
