import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { stateOwner } from '@/db/operations/consignment/state-owner';
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
