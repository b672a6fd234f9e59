import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { problemResponse, readJsonBody } from '@/app/_server/problem-response';
import { listOf } from '@/app/api/v1/_reading/list';
import { savePlanStart, startName } from '@/db/operations/cards/save-plan-start';
import { listStarts } from '@/db/queries/cards/starts';
import { construct } from '@/lib/plans/plan';
import { parseMembers } from '../plan-answer';

const members = z.strictObject({ name: z.unknown(), construct: z.unknown() });

/** Keeps a construct as the acting person's own starting point. */
export const POST = endpoint(
  'POST /api/v1/plans/starts',
  { body: members.extend({ name: startName, construct }) },
  async ({ db, person, request }) => {
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = parseMembers(members, body.value);
    if (!parsed.ok) return parsed.response;
    const kept = await savePlanStart({ db, now: now(), newId, person, ...parsed.value });
    if (kept.ok) return jsonAnswer(kept.value, { status: 201 });
    return problemResponse(422, 'The start can’t be kept as it is', kept.problems);
  },
);

/** Every saved start, retired ones too. */
export const GET = listOf('GET /api/v1/plans/starts', {
  rows: ({ db }) => listStarts(db),
  keyOf: ({ id }) => [id],
});
