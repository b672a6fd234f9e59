import { and, eq } from 'drizzle-orm';
import type { PlanId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import { type PlanOutcome, refused } from '@/lib/plans/refusal';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import { planFromRow } from '../mappers/plan';
import type { Person } from '../queries/people';
import { plans } from '../schema';

interface DiscardPlanDraft {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  planId: PlanId;
  revision: number;
}

/** Throws a draft away; the confirmed version, if there is one, stands. The ledger keeps what was thrown away. */
export async function discardPlanDraft(request: DiscardPlanDraft): Promise<PlanOutcome<null>> {
  const { db, now, person, planId, revision } = request;
  if (!may(person, 'writePlan')) return refused('notPermitted', `${person.name} can’t write a plan.`);
  return db.tx(async (write) => {
    const [row] = await write.select().from(plans).where(eq(plans.id, planId));
    if (!row) return refused('notFound', 'There is no such plan; the draft may have been discarded already.');
    const current = planFromRow(row);
    if (current.status !== 'draft')
      return refused('frozen', 'A confirmed plan is never thrown away.', current);
    if (current.revision !== revision) {
      return refused('conflict', 'Somebody saved another version of this draft meanwhile.', current);
    }
    await write.delete(plans).where(and(eq(plans.id, planId), eq(plans.status, 'draft')));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'discard-plan-draft',
      subjectKind: 'plan',
      subjectId: planId,
      detail: {
        caseId: current.caseId,
        version: current.version,
        construct: { ...current.construct, note: null },
      },
    });
    return { ok: true, value: null };
  });
}
