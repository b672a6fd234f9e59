import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { retirePlanStart } from '@/db/operations/cards/retire-plan-start';
import { startId } from '@/lib/identity/ids';

const members = z.strictObject({ retire: z.boolean() });

/** Takes a saved start out of use, or brings it back. */
export const POST = endpoint(
  'POST /api/v1/plans/starts/[id]/retire',
  { body: members },
  async ({ db, person, request, params }) => {
    const id = startId.safeParse(params.id);
    if (!id.success) return noSuch('saved start');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await retirePlanStart({ db, now: now(), person, startId: id.data, ...body.value }));
  },
);
