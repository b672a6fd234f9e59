import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { changePlace } from '@/db/operations/places/change-place';
import { placeId } from '@/lib/identity/ids';
import { placeChange } from '@/lib/turns/place';

/** Renames a place, takes it out of use, or brings it back. */
export const PUT = endpoint(
  'PUT /api/v1/places/[id]',
  { body: placeChange },
  async ({ db, person, request, params }) => {
    const id = placeId.safeParse(params.id);
    if (!id.success) return noSuch('place');
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(await changePlace({ db, now: now(), person, placeId: id.data, change: body.value }));
  },
);
