import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { ChosenLines } from '@/app/consignment/_parts/chosen-lines';
import { OrderActs } from '@/app/consignment/_parts/order-acts';
import { USAGE_ORDER_TONES } from '@/app/consignment/_parts/state-tones';
import { UncertainTable } from '@/app/consignment/_parts/uncertain-table';
import { findUsageOrder } from '@/db/queries/consignment/usageOrders';
import { dateWords } from '@/lib/documents/edition';
import { may } from '@/lib/people/permissions';
import { USAGE_ORDER_STATE_WORDS } from '@/lib/wording/consignment';
import { momentWords } from '@/lib/wording/sets';

export const metadata: Metadata = { title: 'Usage order' };
export const dynamic = 'force-dynamic';

/** One usage order: what was used, what is to be replaced, and how far it has come. */
export default async function UsageOrderPage({ params }: { params: Promise<{ id: string }> }) {
  const { db, person } = await enter('/consignment/orders/[id]');
  const { id } = await params;
  const at = now();
  const order = await findUsageOrder(db, id);
  if (!order) notFound();
  const used = order.lines.filter(({ way }) => way === 'used');
  const pieces = (lines: readonly { pieces: number }[]) => lines.reduce((sum, one) => sum + one.pieces, 0);
  const toReplace = pieces(used.filter(({ replace }) => replace === true));
  const unsaid = used.filter(({ replace }) => replace === null).length;
  const mayMake = may(person, 'makeUsageOrder');
  const by = (moment: string | null, name: string | null, more: string | null = null) =>
    moment === null ? null : `${momentWords(moment, at)}, ${name ?? ''}${more === null ? '' : `: ${more}`}`;
  const said = (term: string, value: string | null) => (value === null ? [] : [{ term, value }]);
  return (
    <Page
      title={`Usage order ${order.number}`}
      mark={
        <Status tone={USAGE_ORDER_TONES[order.state]}>
          {order.settledAt === null ? USAGE_ORDER_STATE_WORDS[order.state] : 'Sent, nothing more expected'}
        </Status>
      }
      lead={`For ${order.owner}. A person says of every line whether it is to be replaced; the theatre manager approves it; you send it yourself, as paper or as a file.`}
      breadcrumb={[
        { label: 'Consignment', href: '/consignment' },
        { label: order.owner, href: `/consignment/${order.lenderId}` },
      ]}
      actions={
        <>
          <LinkButton href={`/consignment/orders/${id}/paper`} kind="primary" newTab>
            Usage order as PDF
          </LinkButton>
          <LinkButton href={`/consignment/orders/${id}/usage.xlsx`} download>
            XLSX
          </LinkButton>
          <LinkButton href={`/consignment/orders/${id}/usage.csv`} download>
            CSV
          </LinkButton>
          <LinkButton href={`/consignment/orders/${id}/usage.json`} download>
            JSON
          </LinkButton>
        </>
      }
    >
      <DefinitionList
        columns={2}
        items={[
          { term: 'Owner', value: order.owner },
          { term: 'Made', value: by(order.madeAt, order.madeBy) },
          { term: 'Pieces used', value: String(pieces(used)) },
          {
            term: 'To be replaced',
            value:
              unsaid === 0
                ? String(toReplace)
                : `${toReplace} so far; ${unsaid} of ${used.length} lines not said`,
          },
          ...said('Approved', by(order.approvedAt, order.approvedBy)),
          ...said('Sent', by(order.sentAt, order.sentBy, order.sentHow)),
          ...said('Withdrawn', by(order.withdrawnAt, order.withdrawnBy, order.withdrawnBecause)),
          ...said('Nothing more expected', by(order.settledAt, order.settledBy, order.settledBecause)),
        ]}
      />
      <OrderActs
        order={{
          id: order.id,
          number: order.number,
          revision: order.revision,
          state: order.state,
          settled: order.settledAt !== null,
        }}
        unsaid={unsaid}
        mayMake={mayMake}
        mayApprove={may(person, 'approveUsageOrder')}
      />
      <Section title="Lines" note={`${order.lines.length}`}>
        <ChosenLines
          order={{ id: order.id, number: order.number, revision: order.revision }}
          lines={order.lines.map((line) => ({ ...line, day: dateWords(line.doneOn) }))}
          choosing={mayMake && order.state === 'made'}
        />
      </Section>
      {order.uncertain.length > 0 ? (
        <Section title="Uncertain as it was made" note="told to the owner, charged on no order">
          <UncertainTable rows={order.uncertain} />
        </Section>
      ) : null}
    </Page>
  );
}
