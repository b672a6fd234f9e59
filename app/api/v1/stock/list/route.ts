import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { servedStock } from '@/app/stock/served-stock';

const asked = z.object({
  q: z.string().optional().describe('Words, each of which is in the name, the code, the lot or the place.'),
  view: z.enum(['lots']).optional().describe('A line a lot; a line an item when left out.'),
  show: z.string().optional().describe('Which of the filters of the screen; all when left out.'),
});

/** One page of the shelves, as its address asks for it. */
export const GET = endpoint('GET /api/v1/stock/list', { query: asked }, async ({ db, request }) =>
  jsonAnswer(await servedStock(db, new URL(request.url).searchParams, now())),
);
