import { listOf } from '@/app/api/v1/_reading/list';
import { listOrders } from '@/db/queries/restock/orders';

/** Orders to makers, the newest first. */
export const GET = listOf('GET /api/v1/restock/orders', {
  rows: ({ db }) => listOrders(db),
  keyOf: ({ number, id }) => [number, id],
  newestFirst: true,
});
