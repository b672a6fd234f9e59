import 'server-only';
import { noSuch } from '@/app/_server/outcome-answer';
import { findOrder, type Order } from '@/db/queries/restock/orders';
import type { Reading } from '@/db/reader';

/** An order as a file to save, under its number; kept by nobody on the way. */
export async function orderFile(
  db: Reading,
  id: string,
  {
    ends,
    type,
    write,
  }: { ends: string; type: string; write: (order: Order) => BodyInit | Promise<BodyInit> },
): Promise<Response> {
  const order = await findOrder(db, id);
  if (!order) return noSuch('order');
  return new Response(await write(order), {
    headers: {
      'Content-Type': type,
      'Content-Disposition': `attachment; filename="order-${order.number}.${ends}"`,
      'Cache-Control': 'no-store',
    },
  });
}
