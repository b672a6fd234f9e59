import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { keptCatalogue } from '@/db/queries/caseKit';
import { loadFitEngine } from '@/db/queries/fitRules';
import { relation as relations } from '@/lib/fit/rule';
import { fitTable } from '@/lib/fit/table';
import { RELATION_WORDS } from '@/lib/wording/fit';
import { FitNav } from '../_parts/fit-nav';
import { today } from '../_parts/today';
import { FitGrid } from './fit-grid';
import { gridOf } from './grid-model';
import { RelationPicker } from './relation-picker';

export const metadata: Metadata = { title: 'Fit table' };

type Search = Record<string, string | string[] | undefined>;

/** One relation over the whole catalogue: rows against columns, each cell with its reasons. */
export default async function TablePage({ searchParams }: { searchParams: Promise<Search> }) {
  const { db } = await enter('/fit/table');
  const asked = (await searchParams).relation;
  const relation = relations.catch('seats').parse(Array.isArray(asked) ? asked[0] : asked);
  const [catalogue, engine] = await Promise.all([keptCatalogue(db), loadFitEngine(db, today())]);
  const current = catalogue.filter(({ status }) => status === 'current');
  const table = fitTable(engine, current, relation);
  const picker = (
    <RelationPicker
      relations={relations.options.map((value) => ({
        value,
        label: `${RELATION_WORDS[value].name}: ${RELATION_WORDS[value].between}`,
      }))}
    />
  );
  return (
    <Page
      title="Fit table"
      lead="Things that no rule can tell apart share a row or a column. Arrow keys move from cell to cell."
      breadcrumb={[{ label: 'Fit', href: '/fit' }]}
    >
      <FitNav here="table" />
      {table.rows.length === 0 || table.columns.length === 0 ? (
        <>
          {picker}
          <EmptyState
            title="Nothing to set against each other"
            action={<LinkButton href="/catalogue">To the catalogue</LinkButton>}
          >
            The catalogue has no current items for “{RELATION_WORDS[relation].between}”. Add some, or choose
            another table.
          </EmptyState>
        </>
      ) : (
        <FitGrid
          key={relation}
          caption={RELATION_WORDS[relation].asks}
          grid={gridOf(table)}
          picker={picker}
        />
      )}
    </Page>
  );
}
