import { eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { textProblems } from '@/lib/plans/checkConstruct';
import { consignmentWords as words } from '@/lib/wording/consignment';
import { appendLedger } from '../../ledger';
import { usageOrders } from '../../schema';
import { type AtUsageOrder, atUsageOrder, type StandsNow } from './at-usage-order';

/** Keeps that a person sent an approved usage order, and how. The program sends nothing. */
export async function markUsageOrderSent(
  request: AtUsageOrder & { how: string },
): Promise<Outcome<{ revision: number }, StandsNow>> {
  const { now, person, how } = request;
  const problems = textProblems(how, ['how']);
  if (problems.length > 0) return refusedFor(problems);
  return atUsageOrder(request, 'makeUsageOrder', async (write, { id, number, state, revision }) => {
    if (state === 'sent') return refused('frozen', words.sentAlready(number), { revision, state });
    if (state !== 'approved') return refused('frozen', words.notApproved(number), { revision, state });
    await write
      .update(usageOrders)
      .set({ state: 'sent', sentBy: person.id, sentAt: now, sentHow: how, revision: revision + 1 })
      .where(eq(usageOrders.id, id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'mark-usage-order-sent',
      subjectKind: 'usageOrder',
      subjectId: id,
      detail: { number, how },
    });
    return { ok: true, value: { revision: revision + 1 } };
  });
}
