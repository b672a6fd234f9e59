import { endpoint } from '@/app/_server/enter';
import { usageFile } from '@/app/consignment/_parts/usage-file';
import { usageOrderJson } from '@/lib/documents/usageOrder';

/** The usage order for another program. */
export const GET = endpoint('GET /consignment/orders/[id]/usage.json', ({ db, params }) =>
  usageFile(db, params.id, {
    ends: 'json',
    type: 'application/json',
    write: (order) => JSON.stringify(usageOrderJson(order), null, 2),
  }),
);
