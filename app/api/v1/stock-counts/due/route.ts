import { now } from '@/app/_server/clock';
import { listOf } from '@/app/api/v1/_reading/list';
import { placesToCount } from '@/db/queries/shelf/placesToCount';

/** Places, with how many of their heaps are due to be counted. */
export const GET = listOf('GET /api/v1/stock-counts/due', {
  rows: ({ db }) => placesToCount(db, now()),
  keyOf: ({ id }) => [id],
});
