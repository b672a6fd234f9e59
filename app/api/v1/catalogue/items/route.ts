import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { problemResponse, readJsonBody } from '@/app/_server/problem-response';
import { listOf } from '@/app/api/v1/_reading/list';
import { addItem } from '@/db/operations/add-item';
import { searchCatalogue } from '@/db/queries/catalogueSearch';
import { ITEM_KINDS } from '@/lib/catalogue/item';
import { catalogueSearch } from '@/lib/catalogue/search';
import { itemId } from '@/lib/identity/ids';
import { problemsFromZod } from '@/lib/identity/result';
import { draftMember } from '../draft-member';

const members = z.strictObject({ id: itemId, kind: z.enum(ITEM_KINDS), draft: draftMember });

/** Adds an item from a form. The id is the form's own, so that a form sent twice adds one item. */
export const POST = endpoint(
  'POST /api/v1/catalogue/items',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readJsonBody(request);
    if (!body.ok) return body.answer;
    const parsed = members.safeParse(body.value);
    if (!parsed.success) return problemResponse(400, 'Not a form of an item', problemsFromZod(parsed.error));
    return outcomeAnswer(await addItem({ db, now: now(), person, ...parsed.data }), 201);
  },
);

const narrowed = {
  q: z.string().max(200).optional().describe('Words, sizes or a code, as people type them.'),
  kind: z
    .enum(ITEM_KINDS as [string, ...string[]])
    .optional()
    .describe('The kind of item.'),
  maker: z.string().max(70).optional().describe('The id of the maker.'),
  status: z.enum(['current', 'withdrawn', 'recalled']).optional().describe('How the item stands.'),
  missing: z.literal('yes').optional().describe('Only items with values that nobody has stated.'),
};

/** Items of the catalogue, all of them or those that a search leaves. */
export const GET = listOf('GET /api/v1/catalogue/items', {
  query: narrowed,
  rows: ({ db, query }) => searchCatalogue(db, catalogueSearch.parse(query)),
  keyOf: ({ id }) => [id],
});
