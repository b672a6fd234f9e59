import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { AccountTable } from '@/app/consignment/_parts/account-table';
import { MakeOrder } from '@/app/consignment/_parts/make-order';
import { ReconciliationsTable } from '@/app/consignment/_parts/reconciliations-table';
import { UncertainTable } from '@/app/consignment/_parts/uncertain-table';
import { UsageOrdersTable } from '@/app/consignment/_parts/usage-orders-table';
import { WaitingTable } from '@/app/consignment/_parts/waiting-table';
import { findOwner } from '@/db/queries/consignment/owners';
import { listReconciliations } from '@/db/queries/consignment/reconciliations';
import { listUsageOrders } from '@/db/queries/consignment/usageOrders';
import { unaccounted } from '@/lib/consignment/account';
import { dateWords } from '@/lib/documents/edition';
import { may } from '@/lib/people/permissions';
import { momentWords } from '@/lib/wording/sets';

export const metadata: Metadata = { title: 'Consignment of one owner' };
export const dynamic = 'force-dynamic';

/** One owner’s stock: what waits for a usage order, what is uncertain, and where every piece went. */
export default async function OwnerPage({ params }: { params: Promise<{ id: string }> }) {
  const { db, person } = await enter('/consignment/[id]');
  const { id } = await params;
  const at = now();
  const [owner, orders, reconciled] = await Promise.all([
    findOwner(db, id),
    listUsageOrders(db, id),
    listReconciliations(db, id),
  ]);
  if (!owner) notFound();
  const open = orders.find(({ state }) => state === 'made');
  const notSent = orders.find(({ state }) => state === 'made' || state === 'approved');
  const used = owner.waiting.filter(({ way }) => way === 'used');
  const sum = (of: 'onShelf' | 'withCases') => owner.accounts.reduce((all, one) => all + one[of], 0);
  const inSlots = owner.inSlots.reduce((all, { lo, hi }) => ({ lo: all.lo + lo, hi: all.hi + hi }), {
    lo: 0,
    hi: 0,
  });
  const mayMake = may(person, 'makeUsageOrder') && owner.waiting.length > 0 && !open;
  return (
    <Page
      title={owner.name}
      lead="What of their stock was used and is on no usage order yet, what may have been theirs, and where every piece went."
      breadcrumb={[{ label: 'Consignment', href: '/consignment' }]}
      actions={
        <>
          {mayMake ? (
            <MakeOrder owner={{ id: owner.id, name: owner.name }} lines={owner.waiting.length} />
          ) : null}
          {may(person, 'reconcileConsignment') && owner.inUse ? (
            <LinkButton href={`/consignment/${owner.id}/reconcile`}>Reconcile with their list</LinkButton>
          ) : null}
          {notSent ? (
            <LinkButton href={`/consignment/orders/${notSent.id}`} kind="primary">
              {`${notSent.number}, not sent yet`}
            </LinkButton>
          ) : null}
        </>
      }
    >
      <FigureRow>
        <Figure
          label="Used, on no order yet"
          value={used.reduce((all, { pieces }) => all + pieces, 0)}
          unit="pieces"
        />
        <Figure label="On the shelf" value={sum('onShelf')} unit="pieces" />
        <Figure label="With cases" value={sum('withCases')} unit="pieces" />
        <Figure
          label="In slots of sets"
          value={inSlots.lo === inSlots.hi ? inSlots.lo : `${inSlots.lo}–${inSlots.hi}`}
          unit="pieces"
        />
      </FigureRow>
      <Section
        title="Waits for a usage order"
        note={owner.waiting.length === 1 ? 'one line' : `${owner.waiting.length} lines`}
      >
        {open ? (
          <p>{`${open.number} is made and not approved yet. What waits here comes on the order after it.`}</p>
        ) : null}
        <WaitingTable rows={owner.waiting.map((line) => ({ ...line, day: dateWords(line.doneOn) }))} />
      </Section>
      {owner.uncertain.length > 0 ? (
        <Section title="Uncertain" note="told to the owner, charged on no order">
          <p>
            Pieces of several owners lay in one slot of a set, and not every lot was read. So many at least
            and at most were theirs; reading the lot at the table is what settles it.
          </p>
          <UncertainTable rows={owner.uncertain} />
        </Section>
      ) : null}
      <Section title="Where every piece went" note={`${owner.accounts.length} lots`}>
        <AccountTable rows={owner.accounts.map((row) => ({ ...row, unaccounted: unaccounted(row) }))} />
      </Section>
      <Section title="Usage orders" note={orders.length === 0 ? 'none yet' : `${orders.length}`}>
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
      <Section title="Reconciliations" note={reconciled.length === 0 ? 'none yet' : `${reconciled.length}`}>
        {reconciled.length > 0 ? (
          <ReconciliationsTable
            rows={reconciled.map(({ listedOn, enteredAt, closedAt, ...row }) => ({
              ...row,
              day: dateWords(listedOn),
              entered: momentWords(enteredAt, at),
              isClosed: closedAt !== null,
            }))}
          />
        ) : null}
      </Section>
    </Page>
  );
}
