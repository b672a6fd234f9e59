import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { addPlace } from '@/db/operations/places/add-place';
import { listPlaces } from '@/db/queries/places';
import { newPlace } from '@/lib/turns/place';

/** Adds a place; the operation parses it, so that every fault comes from one place. */
export const POST = endpoint('POST /api/v1/places', { body: newPlace }, async ({ db, person, request }) => {
  const body = await readBody(request, z.looseObject({}));
  if (!body.ok) return body.response;
  return outcomeAnswer(await addPlace({ db, now: now(), newId, person, place: body.value }), 201);
});

/** Every place, with how much lies there. */
export const GET = listOf('GET /api/v1/places', {
  rows: ({ db }) => listPlaces(db),
  keyOf: ({ id }) => [id],
});
