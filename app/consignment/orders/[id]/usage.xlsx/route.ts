import { endpoint } from '@/app/_server/enter';
import { usageFile } from '@/app/consignment/_parts/usage-file';
import { usageColumns } from '@/lib/documents/usageOrder';
import { workbookOf } from '@/lib/lists/workbook';

/** The lines of a usage order as a workbook, its texts as texts. */
export const GET = endpoint('GET /consignment/orders/[id]/usage.xlsx', ({ db, params }) =>
  usageFile(db, params.id, {
    ends: 'xlsx',
    type: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
    write: async (order) => (await workbookOf(order.number, usageColumns(order), order.lines)).slice().buffer,
  }),
);
