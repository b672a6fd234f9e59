import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { ChangesList } from '@/app/cases/changes-list';
import { findStart, startVersions } from '@/db/queries/cards/starts';
import { itemNames } from '@/db/queries/planner';
import { compareConstructs } from '@/lib/plans/compare';
import { chosenVersions } from '../../../_parts/chosen-versions';
import { savedWords } from '../../../_parts/moment';
import { VersionChoice } from '../../../_parts/version-choice';

export const metadata: Metadata = { title: 'Compare versions of a start' };
export const dynamic = 'force-dynamic';

/** Any two versions of a saved start, hole by hole. */
export default async function CompareStartPage({
  params,
  searchParams,
}: {
  params: Promise<{ id: string }>;
  searchParams: Promise<{ from?: string; to?: string }>;
}) {
  const { db } = await enter('/plans/starts/[id]/compare');
  const start = await findStart(db, (await params).id);
  if (!start) notFound();
  const [versions, names] = await Promise.all([startVersions(db, start.id), itemNames(db)]);
  const chosen = chosenVersions(versions, await searchParams);
  if (!chosen) notFound();
  const { before, after } = chosen;
  return (
    <Page
      title="Compare versions"
      lead={`${start.name}, of ${start.owner.name}`}
      breadcrumb={[
        { label: 'Starts and preference cards', href: '/plans' },
        { label: start.name, href: `/plans/starts/${start.id}` },
      ]}
    >
      <VersionChoice
        key={`${before.version} ${after.version}`}
        versions={versions.map(({ version, savedAt }) => ({ version, saved: savedWords(savedAt) }))}
        from={before.version}
        to={after.version}
      />
      <Section title={`Version ${before.version} and version ${after.version}`}>
        <ChangesList
          caption={`Changes from version ${before.version} to version ${after.version}`}
          changes={compareConstructs(before.construct, after.construct)}
          itemName={(id) => names.get(id) ?? id}
          heads={[`Version ${before.version}`, `Version ${after.version}`]}
        />
      </Section>
    </Page>
  );
}
