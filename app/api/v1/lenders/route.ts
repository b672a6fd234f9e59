import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { saveLender } from '@/db/operations/loans/save-lender';
import { lendersOnFile } from '@/db/queries/loans/lenders';
import { lenderEntry } from '@/lib/loans/entries';

/** Adds a lender; the operation parses it, so that every fault comes from one place. */
export const POST = endpoint(
  'POST /api/v1/lenders',
  { body: lenderEntry },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await saveLender({ db, now: now(), newId, person, entry: body.value, known: null }),
      201,
    );
  },
);

/** Lenders, with how they kept their word. */
export const GET = listOf('GET /api/v1/lenders', {
  rows: ({ db }) => lendersOnFile(db, now()),
  keyOf: ({ id }) => [id],
});
