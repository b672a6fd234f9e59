import { endpoint } from '@/app/_server/enter';
import { usageFile } from '@/app/consignment/_parts/usage-file';
import { usageColumns } from '@/lib/documents/usageOrder';
import { csvOf } from '@/lib/lists/csv';

/** The lines of a usage order as comma-separated values. */
export const GET = endpoint('GET /consignment/orders/[id]/usage.csv', ({ db, params }) =>
  usageFile(db, params.id, {
    ends: 'csv',
    type: 'text/csv; charset=utf-8; header=present',
    write: (order) => csvOf(usageColumns(order), order.lines),
  }),
);
