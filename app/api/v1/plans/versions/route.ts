import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { readJsonBody } from '@/app/_server/problem-response';
import { beginPlanVersion } from '@/db/operations/begin-plan-version';
import { caseId } from '@/lib/identity/ids';
import { parseMembers, planAnswer } from '../plan-answer';

const members = z.strictObject({ caseId });

/** Begins the next version of a confirmed plan, as a copy. */
export const POST = endpoint(
  'POST /api/v1/plans/versions',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = parseMembers(members, body.value);
    if (!parsed.ok) return parsed.response;
    return planAnswer(db, await beginPlanVersion({ db, now: now(), newId, person, ...parsed.value }), 201);
  },
);
