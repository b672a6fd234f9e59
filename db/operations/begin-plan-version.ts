import { and, desc, eq } from 'drizzle-orm';
import { type CaseId, type NewId, planId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import type { PlanVersion } from '@/lib/plans/planVersion';
import { type PlanOutcome, refused } from '@/lib/plans/refusal';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import { planFromRow } from '../mappers/plan';
import type { Person } from '../queries/people';
import { plans } from '../schema';

interface BeginPlanVersion {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  caseId: CaseId;
}

/** Begins the next version of a plan as a copy of the confirmed one. Begun twice, it is the same draft. */
export async function beginPlanVersion(request: BeginPlanVersion): Promise<PlanOutcome<PlanVersion>> {
  const { db, now, newId, person, caseId } = request;
  if (!may(person, 'writePlan')) return refused('notPermitted', `${person.name} can’t write a plan.`);
  return db.tx(async (write) => {
    const [last] = await write
      .select()
      .from(plans)
      .where(eq(plans.caseId, caseId))
      .orderBy(desc(plans.version))
      .limit(1);
    if (last?.status === 'draft') return { ok: true, value: planFromRow(last) };
    const [confirmed] = await write
      .select()
      .from(plans)
      .where(and(eq(plans.caseId, caseId), eq(plans.status, 'confirmed')));
    if (!confirmed || !last) return refused('notFound', 'This case has no confirmed plan to change.');
    const version = last.version + 1;
    const [row] = await write
      .insert(plans)
      .values({
        id: planId.parse(newId('plan')),
        caseId,
        version,
        status: 'draft',
        body: confirmed.body,
        writtenBy: person.id,
        writtenAt: now,
        revision: 1,
      })
      .returning();
    if (!row) throw new Error('the plan was not written');
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'begin-plan-version',
      subjectKind: 'plan',
      subjectId: row.id,
      detail: { caseId, version, from: confirmed.version },
    });
    return { ok: true, value: planFromRow(row) };
  });
}
