import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { servedSets } from '@/app/sets/served-sets';

/** One page of the whole-hospital view, as its address asks for it. */
export const GET = endpoint('GET /api/v1/sets/list', async ({ db, request }) =>
  jsonAnswer(await servedSets(db, new URL(request.url).searchParams, now())),
);
