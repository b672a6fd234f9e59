import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { servedSets } from '@/app/sets/served-sets';

const asked = z.object({
  q: z
    .string()
    .optional()
    .describe('Words, each of which is in the code, the kind, the place or the standing.'),
  step: z.string().optional().describe('The step of the turn, as it is named in the answer.'),
  configuration: z.string().optional().describe('The code of the set configuration.'),
  standing: z.string().optional().describe('The word of the standing.'),
  'sets-sort': z
    .string()
    .optional()
    .describe('A column of the list; with a minus before it, the other way round.'),
  'sets-page': z.string().optional().describe('From 1.'),
});

/** One page of the whole-hospital view, as its address asks for it. */
export const GET = endpoint('GET /api/v1/sets/list', { query: asked }, async ({ db, request }) =>
  jsonAnswer(await servedSets(db, new URL(request.url).searchParams, now())),
);
