import { and, eq } from 'drizzle-orm';
import type { PlanId, StartId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import { checkConstruct } from '@/lib/plans/checkConstruct';
import { compareConstructs } from '@/lib/plans/compare';
import { type PlanOutcome, refused, refusedFor } from '@/lib/plans/refusal';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import { planFromRow } from '../mappers/plan';
import type { Person } from '../queries/people';
import { plans } from '../schema';
import { noteStart } from './cards/case-origin';

interface SavePlanDraft {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  planId: PlanId;
  /** The revision the writer began from. */
  revision: number;
  /** As sent from outside. */
  construct: unknown;
  notPatientData: boolean;
  /** The saved start that was laid into the draft since it was saved last. */
  startId?: StartId | undefined;
}

/**
 * Saves a draft over the revision it was begun from. A save that is sent twice is saved once. When somebody saved
 * something else meanwhile it is refused, and the draft as it stands comes back to be shown beside the writer's own.
 */
export async function savePlanDraft(request: SavePlanDraft): Promise<PlanOutcome<{ revision: number }>> {
  const { db, now, person, planId, revision } = request;
  if (!may(person, 'writePlan')) return refused('notPermitted', `${person.name} can’t write a plan.`);
  const checked = checkConstruct(request.construct, request.notPatientData);
  if (!checked.ok) return refusedFor(checked.problems);
  return db.tx(async (write) => {
    const [row] = await write.select().from(plans).where(eq(plans.id, planId));
    if (!row) return refused('notFound', 'There is no such plan; the draft may have been discarded.');
    const current = planFromRow(row);
    if (current.status !== 'draft') {
      return refused(
        'frozen',
        'This version is confirmed and frozen: change the plan to begin a new one.',
        current,
      );
    }
    const changes = compareConstructs(current.construct, checked.value);
    if (changes.length === 0) return { ok: true, value: { revision: current.revision } };
    if (current.revision !== revision) {
      return refused('conflict', 'Somebody saved another version of this draft meanwhile.', current);
    }
    const [saved] = await write
      .update(plans)
      .set({ body: checked.value, writtenBy: person.id, writtenAt: now, revision: revision + 1 })
      .where(and(eq(plans.id, planId), eq(plans.revision, revision), eq(plans.status, 'draft')))
      .returning({ revision: plans.revision });
    if (!saved) throw new Error('the draft changed inside its own transaction');
    const { startId } = request;
    if (startId) await noteStart(write, { caseId: current.caseId, startId, now });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'save-plan-draft',
      subjectKind: 'plan',
      subjectId: planId,
      detail: { version: current.version, revision: saved.revision, changed: changes.map(whatChanged) },
    });
    return { ok: true, value: saved };
  });
}

/** Where a change is, without the note's text: the ledger can't be shortened afterwards. */
function whatChanged(change: ReturnType<typeof compareConstructs>[number]): string {
  if ('holeId' in change) return `${change.plateKey}/${change.holeId}`;
  if ('plateKey' in change) return `${change.plateKey} ${change.kind}`;
  if ('screwKey' in change) return `${change.screwKey} ${change.kind}`;
  return change.kind;
}
