import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { beginStockCount } from '@/db/operations/stock/begin-count';
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
