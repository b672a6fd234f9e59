import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { movePouch } from '@/db/operations/places/move-pouch';
import { moveSet } from '@/db/operations/turns/move-set';
import { revisionOfSet } from '@/db/queries/places';
import { packId, placeId, setId } from '@/lib/identity/ids';

const members = z.union([z.strictObject({ setId }), z.strictObject({ packId })]);

/**
 * Puts one set or pouch in this place, as scanned: where a thing lies is what was seen last, so no revision is asked for.
 */
export const POST = endpoint(
  'POST /api/v1/places/[id]/arrivals',
  { body: members },
  async ({ db, person, session, request, params }) => {
    const place = placeId.safeParse(params.id);
    if (!place.success) return noSuch('place');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const asked = { db, now: now(), newId, person, placeId: place.data };
    if ('packId' in body.value)
      return outcomeAnswer(await movePouch({ ...asked, packId: body.value.packId }));
    const baseRevision = await revisionOfSet(db, body.value.setId);
    if (baseRevision === null) return noSuch('set');
    const { workstationId } = session;
    return outcomeAnswer(await moveSet({ ...asked, setId: body.value.setId, baseRevision, workstationId }));
  },
);
