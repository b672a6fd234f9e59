import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { turnRestockDown } from '@/db/operations/restock/turn-restock-down';
import { restockId } from '@/lib/identity/ids';
import { turnDownEntry } from '@/lib/restock/entries';

const body = z.strictObject({ baseRevision: z.number().int().min(1), entry: z.looseObject({}) });

/** Turns a proposal down, with the reason. */
export const POST = endpoint(
  'POST /api/v1/restock/[id]/turn-down',
  { body: body.extend({ entry: turnDownEntry }) },
  async ({ db, person, request, params }) => {
    const id = restockId.safeParse(params.id);
    if (!id.success) return noSuch('proposal');
    const read = await readBody(request, body);
    if (!read.ok) return read.response;
    return outcomeAnswer(
      await turnRestockDown({ db, now: now(), newId, person, restockId: id.data, ...read.value }),
    );
  },
);
