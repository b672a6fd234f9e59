import { oneOf } from '@/app/api/v1/_reading/one';
import { findOrder } from '@/db/queries/restock/orders';

/** One order to a maker with its lines. */
export const GET = oneOf('GET /api/v1/restock/orders/[id]', { what: 'order' }, ({ db, params }) =>
  findOrder(db, params.id),
);
