import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { CloseOrder } from '@/app/restock/_parts/close-order';
import { OrderLines } from '@/app/restock/_parts/order-lines';
import { orderStands } from '@/app/restock/_parts/order-stands';
import { PartsTable } from '@/app/restock/_parts/parts-table';
import { listPlaces } from '@/db/queries/places';
import { findOrder } from '@/db/queries/restock/orders';
import { dateWords } from '@/lib/documents/edition';
import { may } from '@/lib/people/permissions';
import { penceOf } from '@/lib/restock/value';
import { wallClock } from '@/lib/theatre/localTime';
import { poundsWords } from '@/lib/wording/restock-screens';
import { momentWords } from '@/lib/wording/sets';

export const metadata: Metadata = { title: 'Order' };
export const dynamic = 'force-dynamic';

export default async function OrderPage({ params }: { params: Promise<{ id: string }> }) {
  const { db, person } = await enter('/restock/orders/[id]');
  const { id } = await params;
  const at = now();
  const [order, places] = await Promise.all([findOrder(db, id), listPlaces(db)]);
  if (!order) notFound();
  const today = wallClock(at).date;
  const ordered = order.lines.reduce((sum, line) => sum + line.ordered, 0);
  const here = order.lines.reduce((sum, line) => sum + line.here, 0);
  const late = order.state === 'open' && order.expectedOn !== null && order.expectedOn < today;
  const stands = orderStands({ state: order.state, here, ordered, late });
  const mayReceive = may(person, 'receiveOrder') && order.state === 'open';
  const seen = { id: order.id, number: order.number, revision: order.revision };
  return (
    <Page
      title={`Order ${order.number}`}
      mark={<Status tone={stands.tone}>{stands.word}</Status>}
      lead={`To ${order.maker}. You send it yourself, as paper or as a file; what comes of it is put on the shelf part by part, each with its lot and use-by.`}
      breadcrumb={[
        { label: 'Restock', href: '/restock' },
        { label: 'Orders', href: '/restock/orders' },
      ]}
      actions={
        <>
          <LinkButton href={`/restock/orders/${id}/paper`} kind="primary" newTab>
            Order as PDF
          </LinkButton>
          <LinkButton href={`/restock/orders/${id}/order.xlsx`} download>
            XLSX
          </LinkButton>
          <LinkButton href={`/restock/orders/${id}/order.csv`} download>
            CSV
          </LinkButton>
          <LinkButton href={`/restock/orders/${id}/order.json`} download>
            JSON
          </LinkButton>
        </>
      }
    >
      <DefinitionList
        columns={2}
        items={[
          { term: 'Maker', value: order.maker },
          { term: 'Ordered', value: `${momentWords(order.orderedAt, at)}, approved by ${order.orderedBy}` },
          { term: 'Of proposal', value: `${order.restock}, worked out by ${order.proposedBy}` },
          { term: 'Expected', value: order.expectedOn === null ? null : dateWords(order.expectedOn) },
          { term: 'Came', value: `${here} of ${ordered} pieces` },
          { term: 'Value', value: poundsWords(penceOf(order.lines)) },
          ...(order.closedAt === null
            ? []
            : [
                {
                  term: 'Closed',
                  value: `${momentWords(order.closedAt, at)}, ${order.closedBy ?? ''}${order.closedBecause === null ? '' : `: ${order.closedBecause}`}`,
                },
              ]),
        ]}
      />
      <Section title="Lines" note={`${order.lines.length}`}>
        <OrderLines
          order={seen}
          lines={order.lines}
          receiving={
            mayReceive
              ? {
                  places: places
                    .filter(({ withdrawnAt }) => withdrawnAt === null)
                    .map((place) => ({ id: place.id, name: place.name })),
                  year: Number(today.slice(0, 4)),
                }
              : null
          }
        />
      </Section>
      <Section
        title="What came"
        note={order.parts.length === 0 ? 'nothing yet' : `${order.parts.length} parts`}
      >
        {order.parts.length === 0 ? null : (
          <PartsTable rows={order.parts.map((part) => ({ ...part, came: momentWords(part.doneAt, at) }))} />
        )}
      </Section>
      {mayReceive ? (
        <Section title="Nothing more comes">
          <CloseOrder order={seen} lacking={ordered - here} />
        </Section>
      ) : null}
    </Page>
  );
}
