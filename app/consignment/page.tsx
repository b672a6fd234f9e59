import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { listOwners, lotsOfNobodyStated, ownersToName } from '@/db/queries/consignment/owners';
import { listUsageOrders } from '@/db/queries/consignment/usageOrders';
import { may } from '@/lib/people/permissions';
import { momentWords } from '@/lib/wording/sets';
import { NotStatedTable } from './_parts/not-stated-table';
import { OwnersTable } from './_parts/owners-table';
import { UsageOrdersTable } from './_parts/usage-orders-table';

export const metadata: Metadata = { title: 'Consignment' };
export const dynamic = 'force-dynamic';

/** Whose stock lies here that is not ours, and what of it was used. */
export default async function ConsignmentPage() {
  const { db, person } = await enter('/consignment');
  const at = now();
  const [owners, notStated, orders, named] = await Promise.all([
    listOwners(db),
    lotsOfNobodyStated(db),
    listUsageOrders(db),
    ownersToName(db),
  ]);
  return (
    <Page
      title="Consignment"
      lead="Stock that lies on our shelves and belongs to others until it is used. What is used is told to its owner on a usage order, every piece once; a person says what is to be replaced, approves it and sends it."
    >
      <Section title="Owners" note={`${owners.length}`}>
        {owners.length === 0 ? (
          <EmptyState title="Nothing on consignment has a stated owner">
            Receive a delivery on consignment and name its owner, or state it below.
          </EmptyState>
        ) : (
          <OwnersTable
            rows={owners.map(({ lastSentAt, ...owner }) => ({
              ...owner,
              lastSent: lastSentAt === null ? null : momentWords(lastSentAt, at),
            }))}
          />
        )}
      </Section>
      {notStated.length > 0 ? (
        <Section
          title="Owner not stated"
          note={`${notStated.length === 1 ? 'one lot' : `${notStated.length} lots`} on consignment`}
        >
          <p>
            Nobody has said whose these are, so what was used of them is on no usage order. Stating it covers
            every piece of the lot: on the shelf, with cases, and used.
          </p>
          <NotStatedTable
            rows={notStated}
            owners={
              may(person, 'stateStockOwner')
                ? named.map(({ id, name }) => ({ value: id, label: name }))
                : null
            }
          />
        </Section>
      ) : null}
      <Section
        title="Usage orders"
        note={orders.length === 0 ? 'none yet' : `${orders.length}, newest first`}
      >
        {orders.length > 0 ? (
          <UsageOrdersTable
            rows={orders.map(({ madeAt, sentAt, ...order }) => ({
              ...order,
              made: momentWords(madeAt, at),
              sent: sentAt === null ? null : momentWords(sentAt, at),
            }))}
          />
        ) : null}
      </Section>
    </Page>
  );
}
