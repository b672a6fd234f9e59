import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { saveSupplyTerms } from '@/db/operations/restock/save-supply-terms';
import { listTerms } from '@/db/queries/restock/terms';
import { termsEntry } from '@/lib/restock/entries';

/** States the terms of a maker or an item; the operation parses them, so that every fault comes from one place. */
export const POST = endpoint(
  'POST /api/v1/restock/terms',
  { body: termsEntry },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(await saveSupplyTerms({ db, now: now(), newId, person, entry: body.value }));
  },
);

/** What is agreed with each maker, or holds for one item. */
export const GET = listOf('GET /api/v1/restock/terms', {
  rows: ({ db }) => listTerms(db),
  keyOf: ({ of }) => [of.kind, of.id],
});
