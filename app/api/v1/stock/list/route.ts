import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { servedStock } from '@/app/stock/served-stock';

/** One page of the shelves, as its address asks for it. */
export const GET = endpoint('GET /api/v1/stock/list', async ({ db, request }) =>
  jsonAnswer(await servedStock(db, new URL(request.url).searchParams, now())),
);
