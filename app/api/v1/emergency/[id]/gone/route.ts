import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { recordGone } from '@/db/operations/emergency/record-gone';
import { caseId, setId } from '@/lib/identity/ids';

const members = z.strictObject({ setId, goneAt: z.iso.datetime() });

/** Records that a set taken for an emergency has gone to theatre, and when. */
export const POST = endpoint(
  'POST /api/v1/emergency/[id]/gone',
  { body: members },
  async ({ db, person, request, params }) => {
    const id = caseId.safeParse(params.id);
    if (!id.success) return noSuch('emergency');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await recordGone({ db, now: now(), newId, person, caseId: id.data, ...body.value }));
  },
);
