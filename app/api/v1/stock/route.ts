import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { listOf } from '@/app/api/v1/_reading/list';
import { shelfItems, shelfLots } from '@/db/queries/shelf/shelfLots';

const narrowed = { item: z.string().max(80).optional().describe('The id of an item: its heaps alone.') };

/** Heaps of the shelves, each with its turn in the order of taking; how many to nobody who counts it now. */
export const GET = listOf('GET /api/v1/stock', {
  query: narrowed,
  rows: async ({ db, query: { item } }) =>
    item === undefined ? (await shelfItems(db, now())).flat() : shelfLots(db, now(), { itemId: item }),
  keyOf: ({ id }) => [id],
});
