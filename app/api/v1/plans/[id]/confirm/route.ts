import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch } from '@/app/_server/outcome-answer';
import { withPlan } from '@/app/_server/plan-again';
import { readJsonBody } from '@/app/_server/problem-response';
import { confirmPlan } from '@/db/operations/confirm-plan';
import { planId } from '@/lib/identity/ids';
import { parseMembers, planAnswer, savedRevision } from '../../plan-answer';

const members = z.strictObject({ revision: savedRevision });

/** Confirms the draft as the surgeon saw it. */
export const POST = endpoint(
  'POST /api/v1/plans/[id]/confirm',
  { body: members },
  async ({ db, person, request, params }) => {
    const id = planId.safeParse(params.id);
    if (!id.success) return noSuch('plan');
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = parseMembers(members, body.value);
    if (!parsed.ok) return parsed.response;
    const outcome = await confirmPlan({ db, now: now(), person, planId: id.data, ...parsed.value });
    return planAnswer(db, await withPlan(db, person, 'confirm-plan', outcome));
  },
);
