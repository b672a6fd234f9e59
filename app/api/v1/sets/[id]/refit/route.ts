import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { refitSet } from '@/db/operations/refit-set';
import { setId } from '@/lib/identity/ids';

const members = z.strictObject({ baseRevision: z.number('the revision you saw').int().positive() });

/** Makes an open set follow the version in force. */
export const POST = endpoint(
  'POST /api/v1/sets/[id]/refit',
  { body: members },
  async ({ db, person, request, params }) => {
    const id = setId.safeParse(params.id);
    if (!id.success) return noSuch('set');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await refitSet({ db, now: now(), person, setId: id.data, ...body.value }));
  },
);
