import 'server-only';
import { noSuch } from '@/app/_server/outcome-answer';
import { findUsageOrder, type UsageOrderOnRecord } from '@/db/queries/consignment/usageOrders';
import type { Reading } from '@/db/reader';

/** A usage order as a file to save, under its number; kept by nobody on the way. */
export async function usageFile(
  db: Reading,
  id: string,
  {
    ends,
    type,
    write,
  }: { ends: string; type: string; write: (order: UsageOrderOnRecord) => BodyInit | Promise<BodyInit> },
): Promise<Response> {
  const order = await findUsageOrder(db, id);
  if (!order) return noSuch('usage order');
  return new Response(await write(order), {
    headers: {
      'Content-Type': type,
      'Content-Disposition': `attachment; filename="usage-${order.number}.${ends}"`,
      'Cache-Control': 'no-store',
    },
  });
}
