import type { Metadata } from 'next';
import { Suspense } from 'react';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Skeleton } from '@/app/_ui/skeleton';
import { catalogueFacets, searchCatalogue } from '@/db/queries/catalogueSearch';
import { queryOf, searchFrom } from '@/lib/catalogue/search';
import { may } from '@/lib/people/permissions';
import { CatalogueList } from './catalogue-list';

export const metadata: Metadata = { title: 'Catalogue' };

export default async function CataloguePage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { db, person } = await enter('/catalogue');
  const given = await searchParams;
  const params = new URLSearchParams(
    Object.entries(given).flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])),
  );
  const [rows, facets] = await Promise.all([searchCatalogue(db, searchFrom(params)), catalogueFacets(db)]);
  return (
    <Page
      title="Catalogue"
      lead="Every design the hospital knows: plates, screws and the instruments that go with them, each drawn from its dimensions."
      actions={
        may(person.role, 'editCatalogue') ? (
          <LinkButton href="/catalogue/new" kind="primary">
            Add an item
          </LinkButton>
        ) : null
      }
    >
      <Suspense fallback={<Skeleton lines={8} />}>
        <CatalogueList first={rows} firstQuery={queryOf((name) => params.get(name))} facets={facets} />
      </Suspense>
    </Page>
  );
}
