import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { EnterList } from '@/app/consignment/_parts/enter-list';
import { keptCatalogue } from '@/db/queries/caseKit';
import { ownersToName } from '@/db/queries/consignment/owners';
import { wallClock } from '@/lib/theatre/localTime';

export const metadata: Metadata = { title: 'Reconcile with an owner' };
export const dynamic = 'force-dynamic';

/** Takes what an owner says lies here, or what is counted here, to set it beside our record. */
export default async function ReconcilePage({ params }: { params: Promise<{ id: string }> }) {
  const { db } = await enter('/consignment/[id]/reconcile');
  const { id } = await params;
  const [owners, catalogue] = await Promise.all([ownersToName(db), keptCatalogue(db)]);
  const owner = owners.find((one) => one.id === id);
  if (!owner) notFound();
  return (
    <Page
      bench
      title={`Reconcile with ${owner.name}`}
      lead="Paste or load their list of what lies here, or scan every pack of theirs on the shelf. It is set beside our record lot by lot, and changes nothing on any shelf."
      breadcrumb={[
        { label: 'Consignment', href: '/consignment' },
        { label: owner.name, href: `/consignment/${owner.id}` },
      ]}
    >
      <EnterList
        owner={owner}
        today={wallClock(now()).date}
        codes={Object.fromEntries(catalogue.map(({ id: itemId, code }) => [itemId, code]))}
      />
    </Page>
  );
}
