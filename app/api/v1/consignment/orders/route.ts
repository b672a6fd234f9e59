import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { makeUsageOrder } from '@/db/operations/consignment/make-usage-order';
import { listUsageOrders } from '@/db/queries/consignment/usageOrders';
import { usageOrderEntry } from '@/lib/consignment/entries';

/** Makes a usage order of what waits for one. It is approved and sent by people. */
export const POST = endpoint(
  'POST /api/v1/consignment/orders',
  { body: usageOrderEntry },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(await makeUsageOrder({ db, now: now(), newId, person, entry: body.value }), 201);
  },
);

const narrowed = { owner: z.string().max(80).optional().describe('The id of an owner: theirs alone.') };

/** Usage orders, the newest first. */
export const GET = listOf('GET /api/v1/consignment/orders', {
  query: narrowed,
  rows: ({ db, query }) => listUsageOrders(db, query.owner ?? null),
  keyOf: ({ madeAt, id }) => [madeAt, id],
  newestFirst: true,
});
