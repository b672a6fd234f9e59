import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { listOf } from '@/app/api/v1/_reading/list';
import { shelfLots } from '@/db/queries/shelf/shelfLots';

const narrowed = { item: z.string().max(80).optional().describe('The id of an item: its heaps alone.') };

/** Heaps of the shelves, each with its turn in the order of taking; how many to nobody who counts it now. */
export const GET = listOf('GET /api/v1/stock', {
  query: narrowed,
  rows: ({ db, query }) => shelfLots(db, now(), query.item === undefined ? null : { itemId: query.item }),
  keyOf: ({ id }) => [id],
});
