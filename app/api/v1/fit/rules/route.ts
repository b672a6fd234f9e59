import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { ruleDraftBody } from '@/app/_server/fit/draft-bodies';
import { readBody } from '@/app/_server/outcome-answer';
import { resultAnswer } from '@/app/_server/result-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { draftFitRule } from '@/db/operations/draft-fit-rule';
import { listFitRules } from '@/db/queries/fitRules';

/** Fit rules: the newest version of each. */
export const GET = listOf('GET /api/v1/fit/rules', {
  rows: ({ db }) => listFitRules(db),
  keyOf: ({ code, version }) => [code, version],
});

const drafting = z.strictObject({
  draft: z.unknown(),
  /** The version it was drafted from; 0 for a new rule. */
  basedOn: z.number().int().min(0),
});

/** Drafts a new fit rule, or the next version of one; it is in force only once a second person approves it. */
export const POST = endpoint(
  'POST /api/v1/fit/rules',
  { body: drafting.extend({ draft: ruleDraftBody }) },
  async ({ db, person, request }) => {
    const body = await readBody(request, drafting);
    if (!body.ok) return body.response;
    return resultAnswer(await draftFitRule({ db, now: now(), newId, person, ...body.value }), 201);
  },
);
