import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { stateOwner } from '@/db/operations/consignment/state-owner';
import { listOwners } from '@/db/queries/consignment/owners';
import { ownerEntry } from '@/lib/consignment/entries';

/** States whose the consigned pieces of a lot are. */
export const POST = endpoint(
  'POST /api/v1/consignment/owners',
  { body: ownerEntry },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(await stateOwner({ db, now: now(), person, entry: body.value }));
  },
);

/** Whose stock lies here, and what of it was used. */
export const GET = listOf('GET /api/v1/consignment/owners', {
  rows: ({ db }) => listOwners(db),
  keyOf: ({ id }) => [id],
});
