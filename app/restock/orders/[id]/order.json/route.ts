import { endpoint } from '@/app/_server/enter';
import { orderFile } from '@/app/restock/_parts/order-file';
import { orderJson } from '@/lib/documents/supplyOrder';

/** The order for another program. */
export const GET = endpoint('GET /restock/orders/[id]/order.json', ({ db, params }) =>
  orderFile(db, params.id, {
    ends: 'json',
    type: 'application/json',
    write: (order) => JSON.stringify(orderJson(order), null, 2),
  }),
);
