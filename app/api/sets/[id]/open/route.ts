import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { openSet } from '@/db/operations/turns/open-set';
import { setId } from '@/lib/identity/ids';

const members = z.strictObject({ baseRevision: z.number('the revision you saw').int().positive() });

/** Opens a sealed set on the bench; it stops being sterile. */
export const POST = endpoint('POST /api/sets/[id]/open', async ({ db, person, request, params }) => {
  const id = setId.safeParse(params.id);
  if (!id.success) return noSuch('set');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  return outcomeAnswer(await openSet({ db, now: now(), newId, person, setId: id.data, ...body.value }));
});
