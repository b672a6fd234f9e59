import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { saveCardVersion } from '@/db/operations/cards/save-card-version';
import { cardId } from '@/lib/identity/ids';
import { cardBody } from '@/lib/plans/card';

const members = z.strictObject({ baseVersion: z.number().int().positive(), card: z.unknown() });

/** Saves a change of one's own preference card as its next version. */
export const POST = endpoint(
  'POST /api/v1/plans/cards/[id]/versions',
  { body: members.extend({ card: cardBody }) },
  async ({ db, person, request, params }) => {
    const id = cardId.safeParse(params.id);
    if (!id.success) return noSuch('preference card');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await saveCardVersion({ db, now: now(), person, cardId: id.data, ...body.value }));
  },
);
