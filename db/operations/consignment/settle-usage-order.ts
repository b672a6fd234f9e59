import { eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { textProblems } from '@/lib/plans/checkConstruct';
import { consignmentWords as words } from '@/lib/wording/consignment';
import { appendLedger } from '../../ledger';
import { usageOrders } from '../../schema';
import { type AtUsageOrder, atUsageOrder, type StandsNow } from './at-usage-order';

/** Says that nothing more is expected in replacement on a usage order, and why; restock counts on it no longer. */
export async function settleUsageOrder(
  request: AtUsageOrder & { because: string },
): Promise<Outcome<{ revision: number }, StandsNow>> {
  const { now, person, because } = request;
  const problems = textProblems(because, ['because']);
  if (problems.length > 0) return refusedFor(problems);
  return atUsageOrder(
    request,
    'makeUsageOrder',
    async (write, { id, number, state, settledAt, revision }) => {
      if (state !== 'sent') return refused('frozen', words.notSent(number), { revision, state });
      if (settledAt !== null) return refused('frozen', words.settledAlready(number), { revision, state });
      await write
        .update(usageOrders)
        .set({ settledBy: person.id, settledAt: now, settledBecause: because, revision: revision + 1 })
        .where(eq(usageOrders.id, id));
      await appendLedger(write, {
        doneAt: now,
        enteredAt: now,
        personId: person.id,
        action: 'settle-usage-order',
        subjectKind: 'usageOrder',
        subjectId: id,
        detail: { number, because },
      });
      return { ok: true, value: { revision: revision + 1 } };
    },
  );
}
