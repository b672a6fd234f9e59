import { endpoint } from '@/app/_server/enter';
import { orderFile } from '@/app/restock/_parts/order-file';
import { orderColumns } from '@/lib/documents/supplyOrder';
import { csvOf } from '@/lib/lists/csv';

/** The lines of an order as comma-separated values. */
export const GET = endpoint('GET /restock/orders/[id]/order.csv', ({ db, params }) =>
  orderFile(db, params.id, {
    ends: 'csv',
    type: 'text/csv; charset=utf-8; header=present',
    write: (order) => csvOf(orderColumns(order), order.lines),
  }),
);
