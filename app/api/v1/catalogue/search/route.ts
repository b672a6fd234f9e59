import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { servedCatalogue } from '@/app/catalogue/served-catalogue';

const asked = z.object({
  q: z.string().optional().describe('Words, each of which is in the name or the codes of the item.'),
  'list-sort': z
    .string()
    .optional()
    .describe('A column of the list; with a minus before it, the other way round.'),
  'list-page': z.string().optional().describe('From 1.'),
});

/** One page of what a search leaves, for the list as it is typed in. What makes no sense in the address is left out of it. */
export const GET = endpoint('GET /api/v1/catalogue/search', { query: asked }, async ({ db, request }) =>
  jsonAnswer(await servedCatalogue(db, new URL(request.url).searchParams)),
);
