import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { saveSteriliser, steriliserEntry } from '@/db/operations/loads/save-steriliser';
import { listSterilisers } from '@/db/queries/loads/loadBoard';

const members = z.strictObject({ entry: z.unknown() });

/** Adds a steriliser with its programmes. */
export const POST = endpoint(
  'POST /api/v1/sterilisers',
  { body: members.extend({ entry: steriliserEntry }) },
  async ({ db, person, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { entry } = body.value;
    return outcomeAnswer(
      await saveSteriliser({ db, now: now(), newId, person, steriliserId: null, entry }),
      201,
    );
  },
);

/** Every steriliser with its programmes. */
export const GET = listOf('GET /api/v1/sterilisers', {
  rows: ({ db }) => listSterilisers(db),
  keyOf: ({ id }) => [id],
});
