import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { settleAside } from '@/db/operations/turns/settle-aside';
import { asideId, placeId } from '@/lib/identity/ids';
import { asideOutcome } from '@/lib/turns/aside';

const members = z.strictObject({
  outcome: z.enum(asideOutcome.options, 'choose what became of it'),
  placeId: placeId.nullable().default(null),
});

/** Records what became of pieces put aside. */
export const POST = endpoint(
  'POST /api/v1/aside/[id]/settle',
  { body: members },
  async ({ db, person, request, params }) => {
    const id = asideId.safeParse(params.id);
    if (!id.success) return noSuch('piece put aside');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(
      await settleAside({ db, now: now(), newId, person, asideId: id.data, ...body.value }),
    );
  },
);
