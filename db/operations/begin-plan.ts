import { desc, eq } from 'drizzle-orm';
import { type CaseId, type NewId, planId, type StartId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import { checkConstruct } from '@/lib/plans/checkConstruct';
import type { PlanVersion } from '@/lib/plans/planVersion';
import { type PlanOutcome, refused, refusedFor } from '@/lib/plans/refusal';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import { planFromRow } from '../mappers/plan';
import type { Person } from '../queries/people';
import { cases, plans } from '../schema';
import { noteStart } from './cards/case-origin';

interface BeginPlan {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  caseId: CaseId;
  /** The first version as it stands, as sent from outside. */
  construct: unknown;
  notPatientData: boolean;
  /** The saved start it was laid from, where it was. */
  startId?: StartId | undefined;
}

/** Begins the first version of a case's plan. Refused, with the plan that is there, when somebody was quicker. */
export async function beginPlan(request: BeginPlan): Promise<PlanOutcome<PlanVersion>> {
  const { db, now, newId, person, caseId } = request;
  if (!may(person, 'writePlan')) return refused('notPermitted', `${person.name} can’t write a plan.`);
  const checked = checkConstruct(request.construct, request.notPatientData);
  if (!checked.ok) return refusedFor(checked.problems);
  return db.tx(async (write) => {
    const [booked] = await write.select({ id: cases.id }).from(cases).where(eq(cases.id, caseId));
    if (!booked) return refused('notFound', 'There is no such case.');
    const [there] = await write
      .select()
      .from(plans)
      .where(eq(plans.caseId, caseId))
      .orderBy(desc(plans.version))
      .limit(1);
    if (there)
      return refused('conflict', 'Somebody has begun a plan for this case meanwhile.', planFromRow(there));
    const [row] = await write
      .insert(plans)
      .values({
        id: planId.parse(newId('plan')),
        caseId,
        version: 1,
        status: 'draft',
        body: checked.value,
        writtenBy: person.id,
        writtenAt: now,
        revision: 1,
      })
      .returning();
    if (!row) throw new Error('the plan was not written');
    const { startId } = request;
    if (startId) await noteStart(write, { caseId, startId, now });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'begin-plan',
      subjectKind: 'plan',
      subjectId: row.id,
      detail: { caseId, version: 1, ...(startId ? { startId } : {}) },
    });
    return { ok: true, value: planFromRow(row) };
  });
}
