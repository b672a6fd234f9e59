import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { pagesOf } from '@/app/api/v1/_reading/list';
import { beginStockCount } from '@/db/operations/stock/begin-count';
import { recentStockCounts } from '@/db/queries/shelf/countScreen';
import { placeId, stockCountId } from '@/lib/identity/ids';

const members = z.strictObject({
  countId: stockCountId,
  placeId,
  countClass: z.enum(['A', 'B', 'C', 'all']),
});

/** Begins a blind count of what is due at a place. */
export const POST = endpoint(
  'POST /api/v1/stock-counts',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    return outcomeAnswer(await beginStockCount({ db, now: now(), newId, person, ...body.value }), 201);
  },
);

/** Counts of the shelves, the newest first: where, by whom and how far; never how much was found. */
export const GET = pagesOf('GET /api/v1/stock-counts', {
  rows: ({ db }, { after, limit }) =>
    recentStockCounts(db, limit, after === null ? null : { begunAt: String(after[0]), id: String(after[1]) }),
  keyOf: ({ begunAt, id }) => [begunAt, id],
});
