import { asc, eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { reasonOrder, sameIds } from '@/lib/reasons/reason';
import { reasonsWords as words } from '@/lib/wording/reasons';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { reasonCodes } from '../../schema';

interface OrderReasons {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  /** As sent from outside; parsed here. */
  order: unknown;
}

/** Puts the reasons of one kind into another order, whole; refused where the list no longer stands as it was seen. */
export async function orderReasons(request: OrderReasons): Promise<Outcome<{ ids: string[] }, never>> {
  const { db, now, person } = request;
  if (!may(person, 'keepReasons')) return refused('notPermitted', words.mayNot(person.name));
  const parsed = reasonOrder.safeParse(request.order);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { kind, seen, ids } = parsed.data;
  return db.tx(async (write) => {
    const rows = await write
      .select()
      .from(reasonCodes)
      .where(eq(reasonCodes.kind, kind))
      .orderBy(asc(reasonCodes.position), asc(reasonCodes.id));
    const before = rows.map(({ id }) => id);
    if (before.join() !== seen.join() || !sameIds(before, ids))
      return refused('conflict', words.orderChanged);
    if (before.join() === ids.join()) return refused('frozen', words.sameOrder);
    for (const [position, id] of ids.entries())
      await write.update(reasonCodes).set({ position }).where(eq(reasonCodes.id, id));
    const codeOf = new Map(rows.map(({ id, code }) => [id, code]));
    const codes = (order: readonly string[]) => order.map((id) => codeOf.get(id) ?? id);
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'order-reasons',
      subjectKind: 'reason',
      subjectId: kind,
      detail: { from: codes(before), to: codes(ids) },
    });
    return { ok: true, value: { ids } };
  });
}
