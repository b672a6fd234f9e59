import { endpoint } from '@/app/_server/enter';
import { orderFile } from '@/app/restock/_parts/order-file';
import { orderColumns } from '@/lib/documents/supplyOrder';
import { workbookOf } from '@/lib/lists/workbook';

/** The lines of an order as a workbook, its texts as texts. */
export const GET = endpoint('GET /restock/orders/[id]/order.xlsx', ({ db, params }) =>
  orderFile(db, params.id, {
    ends: 'xlsx',
    type: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
    write: async (order) => (await workbookOf(order.number, orderColumns(order), order.lines)).slice().buffer,
  }),
);
