import type { Metadata } from 'next';
import { Suspense } from 'react';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { onlyTexts, servedQuery } from '@/app/_ui/served-rows';
import { Skeleton } from '@/app/_ui/skeleton';
import { catalogueFacets } from '@/db/queries/catalogueSearch';
import { may } from '@/lib/people/permissions';
import { CatalogueList } from './catalogue-list';
import { CATALOGUE_NAMES } from './catalogue-values';
import { servedCatalogue } from './served-catalogue';

export const metadata: Metadata = { title: 'Catalogue' };

export default async function CataloguePage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { db, person } = await enter('/catalogue');
  const params = onlyTexts(await searchParams);
  const [first, facets] = await Promise.all([servedCatalogue(db, params), catalogueFacets(db)]);
  return (
    <Page
      title="Catalogue"
      lead="Every design the hospital knows: plates, screws and the instruments that go with them, each drawn from its dimensions."
      actions={
        may(person, 'editCatalogue') ? (
          <LinkButton href="/catalogue/new" kind="primary">
            Add an item
          </LinkButton>
        ) : null
      }
    >
      <Suspense fallback={<Skeleton lines={8} />}>
        <CatalogueList
          first={first}
          firstQuery={servedQuery(CATALOGUE_NAMES, (name) => params.get(name) || null)}
          facets={facets}
        />
      </Suspense>
    </Page>
  );
}
