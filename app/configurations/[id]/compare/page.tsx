import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { enter } from '@/app/_server/enter';
import { Button } from '@/app/_ui/button';
import { FilterBar } from '@/app/_ui/filter-bar';
import { Page } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { keptCatalogue } from '@/db/queries/caseKit';
import { findConfiguration } from '@/db/queries/configurations';
import { compareVersions } from '@/lib/sets/compareVersions';
import { versionChangeRows } from '@/lib/wording/versionChanges';
import { SideBySide } from '../../_parts/side-by-side';

export const metadata: Metadata = { title: 'Versions side by side' };
export const dynamic = 'force-dynamic';

type Query = string | string[] | undefined;
type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ from?: Query; to?: Query }> };

export default async function ComparePage({ params, searchParams }: Props) {
  const { db } = await enter('/configurations/[id]/compare');
  const [{ id }, asked] = [await params, await searchParams];
  const [configuration, catalogue] = await Promise.all([findConfiguration(db, id), keptCatalogue(db)]);
  const newest = configuration?.versions[0];
  if (!configuration || !newest) notFound();
  const { versions } = configuration;
  const pick = (value: Query) => versions.find(({ content }) => content.version === Number(value));
  const after = pick(asked.to) ?? newest;
  const before =
    pick(asked.from) ?? versions.find(({ content }) => content.version < after.content.version) ?? after;
  const names = new Map(catalogue.map((item) => [item.id, item.name]));
  const options = versions.map(({ content }) => ({
    value: String(content.version),
    label: `Version ${content.version}${content.status === 'draft' ? ', in draft' : ''}`,
  }));
  const rows = versionChangeRows(
    compareVersions(before.content, after.content),
    (item) => names.get(item) ?? item,
  );
  return (
    <Page
      title="Versions side by side"
      lead={configuration.name}
      breadcrumb={[
        { label: 'Configurations', href: '/configurations' },
        { label: configuration.code, href: `/configurations/${configuration.id}` },
      ]}
    >
      <FilterBar
        label="Choose the versions"
        action={`/configurations/${configuration.id}/compare`}
        summary={rows.length === 1 ? 'one difference' : `${rows.length} differences`}
        reset={<Button type="submit">Compare</Button>}
      >
        <SelectField
          name="from"
          label="From"
          options={options}
          defaultValue={String(before.content.version)}
        />
        <SelectField name="to" label="To" options={options} defaultValue={String(after.content.version)} />
      </FilterBar>
      <SideBySide
        rows={rows}
        heads={[`Version ${before.content.version}`, `Version ${after.content.version}`]}
        caption={`What differs between version ${before.content.version} and version ${after.content.version}`}
      />
    </Page>
  );
}
