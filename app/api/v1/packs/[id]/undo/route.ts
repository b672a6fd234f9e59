import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { undoPouch } from '@/db/operations/packs/undo-pouch';
import { packId } from '@/lib/identity/ids';

const members = z.strictObject({
  baseRevision: z.number('the revision you saw').int().positive(),
  reason: z.string('say why').max(4000),
});

/** Opens a pouch again that is in no load yet. */
export const POST = endpoint(
  'POST /api/v1/packs/[id]/undo',
  { body: members },
  async ({ db, person, request, params }) => {
    const pack = packId.safeParse(params.id);
    if (!pack.success) return noSuch('pack');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await undoPouch({ db, now: now(), person, packId: pack.data, ...body.value }));
  },
);
