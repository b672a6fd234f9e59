import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { readJsonBody } from '@/app/_server/problem-response';
import { beginPlan } from '@/db/operations/begin-plan';
import { listPlanVersions } from '@/db/queries/cases';
import { listPeople } from '@/db/queries/people';
import { caseId, startId } from '@/lib/identity/ids';
import { construct } from '@/lib/plans/plan';
import { parseMembers, planAnswer } from './plan-answer';

const members = z.strictObject({
  caseId,
  construct: z.unknown(),
  notPatientData: z.boolean().default(false),
  startId: startId.optional(),
});

const asked = z.object({ case: z.string().describe('The id of the case.') });

/** Begins the first version of a case's plan. */
export const POST = endpoint(
  'POST /api/v1/plans',
  { body: members.extend({ construct }) },
  async ({ db, person, request }) => {
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = parseMembers(members, body.value);
    if (!parsed.ok) return parsed.response;
    return planAnswer(db, await beginPlan({ db, now: now(), newId, person, ...parsed.value }), 201);
  },
);

/** The newest version of a case's plan as it stands, so that an open planner can see what others saved. */
export const GET = endpoint('GET /api/v1/plans', { query: asked }, async ({ db, request }) => {
  const id = new URL(request.url).searchParams.get('case') ?? '';
  const [[newest], people] = await Promise.all([listPlanVersions(db, id), listPeople(db)]);
  const writer = people.find((person) => person.id === newest?.writtenBy)?.name ?? null;
  return jsonAnswer({ plan: newest ?? null, writer });
});
