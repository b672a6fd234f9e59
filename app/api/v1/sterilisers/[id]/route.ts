import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { oneOf } from '@/app/api/v1/_reading/one';
import { saveSteriliser, steriliserEntry } from '@/db/operations/loads/save-steriliser';
import { listSterilisers } from '@/db/queries/loads/loadBoard';
import { steriliserId } from '@/lib/identity/ids';

const members = z.strictObject({ entry: z.unknown() });

/** Changes a steriliser's name or programmes. */
export const POST = endpoint(
  'POST /api/v1/sterilisers/[id]',
  { body: members.extend({ entry: steriliserEntry }) },
  async ({ db, person, request, params }) => {
    const id = steriliserId.safeParse(params.id);
    if (!id.success) return noSuch('steriliser');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { entry } = body.value;
    return outcomeAnswer(
      await saveSteriliser({ db, now: now(), newId, person, steriliserId: id.data, entry }),
    );
  },
);

/** One steriliser with its programmes. */
export const GET = oneOf(
  'GET /api/v1/sterilisers/[id]',
  { what: 'steriliser' },
  async ({ db, params }) => (await listSterilisers(db)).find(({ id }) => id === params.id) ?? null,
);
