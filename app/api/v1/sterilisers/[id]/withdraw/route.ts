import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { withdrawSteriliser } from '@/db/operations/loads/withdraw-steriliser';
import { steriliserId } from '@/lib/identity/ids';

const members = z.strictObject({ out: z.boolean(), reason: z.string().max(1000) });

/** Takes a steriliser out of service, or back into it. */
export const POST = endpoint(
  'POST /api/v1/sterilisers/[id]/withdraw',
  { body: members },
  async ({ db, person, request, params }) => {
    const id = steriliserId.safeParse(params.id);
    if (!id.success) return noSuch('steriliser');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await withdrawSteriliser({ db, now: now(), person, steriliserId: id.data, ...body.value }),
    );
  },
);
