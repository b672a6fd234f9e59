import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { oneOf } from '@/app/api/v1/_reading/one';
import { changePlace } from '@/db/operations/places/change-place';
import { listPlaces, whatLiesIn } from '@/db/queries/places';
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

const lying = {
  most: z.coerce
    .number()
    .int()
    .min(1)
    .max(1000)
    .default(100)
    .describe('How many sets, and how many heaps, at most.'),
};

/** One place, how much lies in it, and the first of that; how much of a heap to nobody who counts it now. */
export const GET = oneOf(
  'GET /api/v1/places/[id]',
  { what: 'place', query: lying },
  async ({ db, params, query }) => {
    const place = (await listPlaces(db)).find(({ id }) => id === params.id);
    return place ? { ...place, lying: await whatLiesIn(db, place.id, query.most) } : null;
  },
);
