import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { printLabel } from '@/db/operations/packs/print-label';
import { packId, printId } from '@/lib/identity/ids';

const members = z.strictObject({ id: printId, because: z.string('say why').max(4000) });

/** Prints the label of a pack again: the next copy, with its reason. */
export const POST = endpoint(
  'POST /api/v1/packs/[id]/labels',
  { body: members },
  async ({ db, person, request, params }) => {
    const pack = packId.safeParse(params.id);
    if (!pack.success) return noSuch('pack');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await printLabel({ db, now: now(), person, packId: pack.data, ...body.value }), 201);
  },
);
