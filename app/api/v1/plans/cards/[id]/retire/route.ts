import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { retireCard } from '@/db/operations/cards/retire-card';
import { cardId } from '@/lib/identity/ids';

const members = z.strictObject({ retire: z.boolean() });

/** Takes a preference card out of use, or brings it back. */
export const POST = endpoint(
  'POST /api/v1/plans/cards/[id]/retire',
  { body: members },
  async ({ db, person, request, params }) => {
    const id = cardId.safeParse(params.id);
    if (!id.success) return noSuch('preference card');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await retireCard({ db, now: now(), person, cardId: id.data, ...body.value }));
  },
);
