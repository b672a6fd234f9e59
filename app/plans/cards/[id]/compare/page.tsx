import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { cardVersions, findCard } from '@/db/queries/cards/cards';
import { listStarts } from '@/db/queries/cards/starts';
import { itemNames } from '@/db/queries/planner';
import { CardChanges } from '../../../_parts/card-changes';
import { chosenVersions } from '../../../_parts/chosen-versions';
import { savedWords } from '../../../_parts/moment';
import { VersionChoice } from '../../../_parts/version-choice';

export const metadata: Metadata = { title: 'Compare versions of a card' };
export const dynamic = 'force-dynamic';

/** Any two versions of a preference card. */
export default async function CompareCardPage({
  params,
  searchParams,
}: {
  params: Promise<{ id: string }>;
  searchParams: Promise<{ from?: string; to?: string }>;
}) {
  const { db } = await enter('/plans/cards/[id]/compare');
  const card = await findCard(db, (await params).id);
  if (!card) notFound();
  const [versions, starts, names] = await Promise.all([
    cardVersions(db, card.id),
    listStarts(db),
    itemNames(db),
  ]);
  const chosen = chosenVersions(versions, await searchParams);
  if (!chosen) notFound();
  const { before, after } = chosen;
  return (
    <Page
      title="Compare versions"
      lead={`${card.procedure.name}, the preference card of ${card.surgeon.name}`}
      breadcrumb={[
        { label: 'Starts and preference cards', href: '/plans' },
        { label: card.procedure.name, href: `/plans/cards/${card.id}` },
      ]}
    >
      <VersionChoice
        key={`${before.version} ${after.version}`}
        versions={versions.map(({ version, savedAt }) => ({ version, saved: savedWords(savedAt) }))}
        from={before.version}
        to={after.version}
      />
      <Section title={`Version ${before.version} and version ${after.version}`}>
        <CardChanges
          before={before}
          after={after}
          names={{
            item: (id) => names.get(id) ?? id,
            start: (id) => starts.find((one) => one.id === id)?.name ?? id,
          }}
        />
      </Section>
    </Page>
  );
}
