import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { addReason } from '@/db/operations/reasons/add-reason';
import { orderReasons } from '@/db/operations/reasons/order-reasons';
import { listReasons } from '@/db/queries/reasons/reasons';
import { newReason } from '@/lib/reasons/reason';

/** Puts a reason on the hospital's own list; the operation parses it. */
export const POST = endpoint(
  'POST /api/v1/settings/reason-codes',
  { body: newReason },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(await addReason({ db, now: now(), newId, person, reason: body.value }), 201);
  },
);

/** Puts the reasons of one kind into another order. */
export const PUT = endpoint(
  'PUT /api/v1/settings/reason-codes',
  { body: z.looseObject({}) },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(await orderReasons({ db, now: now(), person, order: body.value }));
  },
);

/** The hospital’s own reasons, retired ones too. */
export const GET = listOf('GET /api/v1/settings/reason-codes', {
  rows: ({ db }) => listReasons(db),
  keyOf: ({ id }) => [id],
});
