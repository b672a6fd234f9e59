import { eq } from 'drizzle-orm';
import type { UsageOrderAct } from '@/lib/consignment/entries';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { consignmentWords as words } from '@/lib/wording/consignment';
import { appendLedger } from '../../ledger';
import { usageOrderLines, usageOrders } from '../../schema';
import { type AtUsageOrder, atUsageOrder, type StandsNow } from './at-usage-order';

interface ChooseReplacement extends AtUsageOrder {
  choices: Extract<UsageOrderAct, { kind: 'choose' }>['choices'];
}

/** Says of lines of an order that is not approved whether their owner is asked to replace them. Nobody else ever says so. */
export async function chooseReplacement(
  request: ChooseReplacement,
): Promise<Outcome<{ revision: number }, StandsNow>> {
  const { now, person, choices } = request;
  return atUsageOrder(request, 'makeUsageOrder', async (write, { id, number, state, revision }) => {
    if (state !== 'made') return refused('frozen', words.notMade(number), { revision, state });
    const lines = await write.select().from(usageOrderLines).where(eq(usageOrderLines.orderId, id));
    const byId = new Map(lines.map((line) => [line.id, line]));
    const problems = choices.flatMap(({ lineId }, at): Problem[] => {
      const path = ['choices', at, 'lineId'];
      const line = byId.get(lineId);
      if (!line) return [{ path, code: 'unknown', message: words.noSuchLine }];
      return line.way === 'used' ? [] : [{ path, code: 'takes-back', message: words.takesBack }];
    });
    if (problems.length > 0) return refusedFor(problems);
    for (const { lineId, replace } of choices)
      await write.update(usageOrderLines).set({ replace }).where(eq(usageOrderLines.id, lineId));
    await write
      .update(usageOrders)
      .set({ revision: revision + 1 })
      .where(eq(usageOrders.id, id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'choose-replacement',
      subjectKind: 'usageOrder',
      subjectId: id,
      detail: {
        number,
        choices: choices.map(({ lineId, replace }) => ({
          lineId,
          before: byId.get(lineId)?.replace ?? null,
          replace,
        })),
      },
    });
    return { ok: true, value: { revision: revision + 1 } };
  });
}
