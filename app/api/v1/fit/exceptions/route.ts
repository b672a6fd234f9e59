import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { exceptionDraftBody } from '@/app/_server/fit/draft-bodies';
import { readBody } from '@/app/_server/outcome-answer';
import { resultAnswer } from '@/app/_server/result-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { draftFitException } from '@/db/operations/draft-fit-exception';
import { exceptionList } from '@/db/queries/fitScreens';

/** Exceptions from fit rules: two items that may or may not go together, whatever the rules say. */
export const GET = listOf('GET /api/v1/fit/exceptions', {
  rows: ({ db }) => exceptionList(db),
  keyOf: ({ exception }) => [exception.id],
});

const drafting = z.strictObject({ draft: z.unknown() });

/** Drafts an exception from the fit rules for two items; it is in force only once a second person approves it. */
export const POST = endpoint(
  'POST /api/v1/fit/exceptions',
  { body: drafting.extend({ draft: exceptionDraftBody }) },
  async ({ db, person, request }) => {
    const body = await readBody(request, drafting);
    if (!body.ok) return body.response;
    return resultAnswer(await draftFitException({ db, now: now(), newId, person, ...body.value }), 201);
  },
);
