import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { ownersToName } from '@/db/queries/consignment/owners';
import { listPlaces } from '@/db/queries/places';
import { receivableItems, recentDeliveries } from '@/db/queries/shelf/receiving';
import { wallClock } from '@/lib/theatre/localTime';
import { ReceiveScreen } from './receive-screen';
import { RecentDeliveries } from './recent-deliveries';

export const metadata: Metadata = { title: 'Receive a delivery' };
export const dynamic = 'force-dynamic';

const SHOWN = 10;

/** Takes a delivery in, line by line as it is unpacked. */
export default async function ReceivePage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { db, person } = await enter('/stock/receive');
  const at = now();
  const { item } = await searchParams;
  const [items, places, owners, recent] = await Promise.all([
    receivableItems(db),
    listPlaces(db),
    ownersToName(db),
    recentDeliveries(db, SHOWN),
  ]);
  return (
    <Page
      bench
      title="Receive a delivery"
      lead="Scan each pack as it is unpacked. What its code does not say is asked for; nothing is received until every line is right."
      breadcrumb={[{ label: 'Stock', href: '/stock' }]}
    >
      <ReceiveScreen
        personId={person.id}
        today={wallClock(at).date}
        items={items.map(({ id, code, name }) => ({ value: id, label: `${code}, ${name}`, note: '' }))}
        places={places
          .filter(({ withdrawnAt }) => withdrawnAt === null)
          .map(({ id, name }) => ({ value: id, label: name }))}
        owners={owners.map(({ id, name }) => ({ value: id, label: name }))}
        first={items.find(({ id }) => id === item)?.id ?? null}
      />
      {recent.length > 0 ? (
        <Section title="Received before" note={`the last ${SHOWN}, newest first`}>
          <RecentDeliveries deliveries={recent} now={at} />
        </Section>
      ) : null}
    </Page>
  );
}
