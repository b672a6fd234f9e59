import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { listOrders } from '@/db/queries/restock/orders';
import { wallClock } from '@/lib/theatre/localTime';
import { momentWords } from '@/lib/wording/sets';
import { OrdersTable } from '../_parts/orders-table';

export const metadata: Metadata = { title: 'Orders' };
export const dynamic = 'force-dynamic';

export default async function OrdersPage() {
  const { db } = await enter('/restock/orders');
  const at = now();
  const today = wallClock(at).date;
  const orders = await listOrders(db);
  return (
    <Page
      title="Orders"
      lead="One order for each maker and approved proposal, from ordering until all of it came or it was closed with a reason."
      breadcrumb={[{ label: 'Restock', href: '/restock' }]}
    >
      <OrdersTable
        rows={orders.map(({ orderedAt, ...order }) => ({
          ...order,
          ordered: order.ordered,
          orderedOn: momentWords(orderedAt, at),
          late: order.state === 'open' && order.expectedOn !== null && order.expectedOn < today,
        }))}
      />
    </Page>
  );
}
