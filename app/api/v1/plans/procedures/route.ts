import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { addProcedure } from '@/db/operations/cards/add-procedure';
import { listProcedures } from '@/db/queries/cards/procedures';
import { newProcedure } from '@/lib/plans/procedure';

/** Puts a procedure on the hospital's list; the operation parses it. */
export const POST = endpoint(
  'POST /api/v1/plans/procedures',
  { body: newProcedure },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(await addProcedure({ db, now: now(), newId, person, procedure: body.value }), 201);
  },
);

/** Every procedure that cards are written for. */
export const GET = listOf('GET /api/v1/plans/procedures', {
  rows: ({ db }) => listProcedures(db),
  keyOf: ({ id }) => [id],
});
