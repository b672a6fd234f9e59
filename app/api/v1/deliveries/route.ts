import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { pagesOf } from '@/app/api/v1/_reading/list';
import { receiveDelivery } from '@/db/operations/stock/receive-delivery';
import { deliveriesAfter } from '@/db/queries/shelf/receiving';
import { delivery } from '@/lib/stock/delivery';

/** Receives a delivery, whole or not at all; the operation parses it, so that every fault comes from one place. */
export const POST = endpoint(
  'POST /api/v1/deliveries',
  { body: delivery },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(await receiveDelivery({ db, now: now(), newId, person, delivery: body.value }), 201);
  },
);

/** Deliveries with their lines, the newest first. */
export const GET = pagesOf('GET /api/v1/deliveries', {
  rows: ({ db }, { after, limit }) =>
    deliveriesAfter(db, { after: after === null ? null : String(after[0]), limit }),
  keyOf: ({ id }) => [id],
});
