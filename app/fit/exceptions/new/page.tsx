import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { loadCatalogue } from '@/db/queries/catalogue';
import { relation as relations } from '@/lib/fit/rule';
import { RELATION_WORDS } from '@/lib/wording/fit';
import { FitNav } from '../../_parts/fit-nav';
import { ExceptionForm } from './exception-form';

export const metadata: Metadata = { title: 'Draft an exception' };

type Search = Record<string, string | string[] | undefined>;

/** Drafts a named exception for a pair of designs; `a` and `b` are item codes to start from. */
export default async function NewExceptionPage({ searchParams }: { searchParams: Promise<Search> }) {
  const { db } = await enter('/fit/exceptions/new');
  const { a, b } = await searchParams;
  const catalogue = await loadCatalogue(db);
  const idOf = (code: unknown) => catalogue.find((item) => item.code === code)?.id ?? null;
  return (
    <Page
      title="Draft an exception"
      lead="Allows or denies one pair of designs, whatever the rules say. One that names a screw holds for its whole screw family. Nothing is in force until a second person approves."
      breadcrumb={[{ label: 'Fit', href: '/fit' }]}
      measure="reading"
    >
      <FitNav here={null} />
      <ExceptionForm
        items={catalogue.map(({ id, code, name }) => ({ value: id, label: `${code} · ${name}` }))}
        relations={relations.options
          .filter((value) => value !== 'sides')
          .map((value) => ({
            value,
            label: `${RELATION_WORDS[value].name}: ${RELATION_WORDS[value].between}`,
          }))}
        first={idOf(a)}
        second={idOf(b)}
      />
    </Page>
  );
}
