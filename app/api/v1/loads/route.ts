import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { pagesOf } from '@/app/api/v1/_reading/list';
import { makeUpLoad } from '@/db/operations/loads/make-up-load';
import { loadsRecorded } from '@/db/queries/api/loadsRecorded';
import { steriliserId } from '@/lib/identity/ids';

const members = z.strictObject({ steriliserId, programme: z.string().max(60) });

/** Begins a load for a steriliser and a programme. */
export const POST = endpoint('POST /api/v1/loads', { body: members }, async ({ db, person, request }) => {
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  return outcomeAnswer(await makeUpLoad({ db, now: now(), newId, person, ...body.value }), 201);
});

/** Loads of the sterilisers, the last made up first. */
export const GET = pagesOf('GET /api/v1/loads', {
  rows: ({ db }, { after, limit }) =>
    loadsRecorded(db, { after: after === null ? null : String(after[0]), limit }),
  keyOf: ({ id }) => [id],
});
