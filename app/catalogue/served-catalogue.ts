import 'server-only';
import { type ServedRows, servedPage } from '@/app/_ui/served-rows';
import type { Database } from '@/db/client';
import { type CatalogueRow, searchCatalogue } from '@/db/queries/catalogueSearch';
import { searchFrom } from '@/lib/catalogue/search';
import { CATALOGUE_VALUES, ITEMS_A_PAGE } from './catalogue-values';

/** The items that an address asks for: searched, sorted, and one page of them. */
export async function servedCatalogue(
  db: Database,
  params: Pick<URLSearchParams, 'get'>,
): Promise<Omit<ServedRows<CatalogueRow>, 'total'>> {
  const rows = await searchCatalogue(db, searchFrom(params));
  return {
    rows: servedPage<CatalogueRow>(rows, CATALOGUE_VALUES, {
      sort: params.get('list-sort') ?? '',
      page: params.get('list-page'),
      pageSize: ITEMS_A_PAGE,
    }),
    found: rows.length,
  };
}
