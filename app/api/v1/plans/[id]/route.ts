import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { readJsonBody } from '@/app/_server/problem-response';
import { oneOf } from '@/app/api/v1/_reading/one';
import { discardPlanDraft } from '@/db/operations/discard-plan-draft';
import { savePlanDraft } from '@/db/operations/save-plan-draft';
import { findPlan } from '@/db/queries/api/findPlan';
import { planId, startId } from '@/lib/identity/ids';
import { construct } from '@/lib/plans/plan';
import { refused } from '@/lib/plans/refusal';
import { parseMembers, planAnswer, savedRevision } from '../plan-answer';

const saved = z.strictObject({
  revision: savedRevision,
  construct: z.unknown(),
  notPatientData: z.boolean().default(false),
  startId: startId.optional(),
});
const discarded = z.strictObject({ revision: savedRevision });

const unknownPlan = () => outcomeAnswer(refused('notFound', 'There is no such plan.'));

/** Saves a draft over the revision it was begun from. */
export const PUT = endpoint(
  'PUT /api/v1/plans/[id]',
  { body: saved.extend({ construct }) },
  async ({ db, person, request, params }) => {
    const id = planId.safeParse(params.id);
    if (!id.success) return unknownPlan();
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = parseMembers(saved, body.value);
    if (!parsed.ok) return parsed.response;
    return planAnswer(db, await savePlanDraft({ db, now: now(), person, planId: id.data, ...parsed.value }));
  },
);

/** Throws a draft away. */
export const DELETE = endpoint(
  'DELETE /api/v1/plans/[id]',
  { body: discarded },
  async ({ db, person, request, params }) => {
    const id = planId.safeParse(params.id);
    if (!id.success) return unknownPlan();
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = parseMembers(discarded, body.value);
    if (!parsed.ok) return parsed.response;
    return planAnswer(
      db,
      await discardPlanDraft({ db, now: now(), person, planId: id.data, ...parsed.value }),
    );
  },
);

/** One version of the plan of a case. */
export const GET = oneOf('GET /api/v1/plans/[id]', { what: 'plan' }, ({ db, params }) =>
  findPlan(db, params.id),
);
