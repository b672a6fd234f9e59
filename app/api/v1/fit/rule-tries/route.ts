import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { ruleDraftBody } from '@/app/_server/fit/draft-bodies';
import { tryFitRule } from '@/app/_server/fit/try-fit-rule';
import { readBody } from '@/app/_server/outcome-answer';
import { resultAnswer } from '@/app/_server/result-answer';

const trying = z.strictObject({ draft: z.unknown() });

/** Tries a fit rule that is not even drafted against the whole catalogue; nothing is kept. */
export const POST = endpoint(
  'POST /api/v1/fit/rule-tries',
  { body: trying.extend({ draft: ruleDraftBody }) },
  async ({ db, request }) => {
    const body = await readBody(request, trying);
    if (!body.ok) return body.response;
    return resultAnswer(await tryFitRule(db, body.value.draft));
  },
);
