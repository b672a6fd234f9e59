import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { listOrders, ordersClosedBefore } from '@/db/queries/restock/orders';
import { wallClock } from '@/lib/theatre/localTime';
import { momentWords } from '@/lib/wording/sets';
import { OrdersTable } from '../_parts/orders-table';

export const metadata: Metadata = { title: 'Orders' };
export const dynamic = 'force-dynamic';

/** Orders closed longer ago are shown when asked for. */
const CLOSED_DAYS = 365;

export default async function OrdersPage({ searchParams }: { searchParams: Promise<{ closed?: string }> }) {
  const { db } = await enter('/restock/orders');
  const at = now();
  const today = wallClock(at).date;
  const everything = (await searchParams).closed === 'all';
  const since = new Date(Date.parse(at) - CLOSED_DAYS * 86_400_000).toISOString();
  const [orders, earlier] = await Promise.all([
    listOrders(db, everything ? {} : { closedSince: since }),
    everything ? 0 : ordersClosedBefore(db, since),
  ]);
  return (
    <Page
      title="Orders"
      lead="One order for each maker and approved proposal, from ordering until all of it came or it was closed with a reason."
      breadcrumb={[{ label: 'Restock', href: '/restock' }]}
      actions={
        earlier > 0 ? (
          <LinkButton href="/restock/orders?closed=all">
            {earlier === 1 ? 'With one closed over a year ago' : `With ${earlier} closed over a year ago`}
          </LinkButton>
        ) : everything ? (
          <LinkButton href="/restock/orders">Open, and closed in the last year</LinkButton>
        ) : null
      }
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
