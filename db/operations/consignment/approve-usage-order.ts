import { and, eq, inArray } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { consignmentWords as words } from '@/lib/wording/consignment';
import { appendLedger } from '../../ledger';
import { movesTakenBack, usageOrderLines, usageOrders } from '../../schema';
import { type AtUsageOrder, atUsageOrder, type StandsNow } from './at-usage-order';

/**
 * Approves a usage order of which every line says whether it is to be replaced. One that tells of a use that was corrected
 * meanwhile is not approved: it is withdrawn and made again.
 */
export async function approveUsageOrder(
  request: AtUsageOrder,
): Promise<Outcome<{ revision: number }, StandsNow>> {
  const { now, person } = request;
  return atUsageOrder(request, 'approveUsageOrder', async (write, { id, number, state, revision }) => {
    if (state !== 'made') return refused('frozen', words.notMade(number), { revision, state });
    const lines = await write.select().from(usageOrderLines).where(eq(usageOrderLines.orderId, id));
    const used = lines.filter(({ way }) => way === 'used');
    const open = used.filter(({ replace }) => replace === null).length;
    if (open > 0) return refused('frozen', words.notChosen(open), { revision, state });
    const corrected = await write
      .select({ seq: movesTakenBack.moveSeq })
      .from(usageOrderLines)
      .innerJoin(movesTakenBack, eq(movesTakenBack.moveSeq, usageOrderLines.moveSeq))
      .where(and(eq(usageOrderLines.orderId, id), inArray(usageOrderLines.way, ['used'])));
    if (corrected.length > 0)
      return refused('frozen', words.correctedSince(number, corrected.length), { revision, state });
    await write
      .update(usageOrders)
      .set({ state: 'approved', approvedBy: person.id, approvedAt: now, revision: revision + 1 })
      .where(eq(usageOrders.id, id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'approve-usage-order',
      subjectKind: 'usageOrder',
      subjectId: id,
      detail: {
        number,
        lines: lines.length,
        toReplace: used.reduce((sum, { replace, pieces }) => sum + (replace ? pieces : 0), 0),
      },
    });
    return { ok: true, value: { revision: revision + 1 } };
  });
}
