'use client';

import { useSearchParams } from 'next/navigation';
import { memo } from 'react';
import { Button } from '@/app/_ui/button';
import { DataTable } from '@/app/_ui/data-table';
import { Disclosure } from '@/app/_ui/disclosure';
import { EmptyState } from '@/app/_ui/empty-state';
import { FilterBar } from '@/app/_ui/filter-bar';
import { NotAnswered } from '@/app/_ui/not-answered';
import { SearchField } from '@/app/_ui/search-field';
import { SelectField } from '@/app/_ui/select-field';
import { type ServedRows, servedQuery } from '@/app/_ui/served-rows';
import { useUrlParam } from '@/app/_ui/url-state';
import { useServed } from '@/app/_ui/use-served';
import type { CatalogueFacets, CatalogueRow } from '@/db/queries/catalogueSearch';
import type { ItemKind } from '@/lib/catalogue/item';
import type { Material } from '@/lib/catalogue/measures';
import { SEARCH_NAMES } from '@/lib/catalogue/search';
import { writeMm } from '@/lib/quantities/length';
import { KIND_WORDS, MATERIAL_WORDS, SIDE_WORDS, sentenceCase } from '@/lib/wording/catalogue';
import styles from './catalogue.module.css';
import { CATALOGUE_NAMES, ITEMS_A_PAGE } from './catalogue-values';
import { columns } from './columns';

type ServedItems = Omit<ServedRows<CatalogueRow>, 'total'>;

const yesNo = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
  { value: 'unknown', label: 'Not stated' },
];

/**
 * The catalogue as a list that follows the typing. What it shows is in the address; the server answers with rows, the
 * newest answer wins, and the drawings come after.
 */
export function CatalogueList({
  first,
  firstQuery,
  facets,
}: {
  first: ServedItems;
  firstQuery: string;
  facets: CatalogueFacets;
}) {
  // the address follows once the typing rests: each change of it draws everything that reads it again
  const [q, setQ] = useUrlParam('q', '', { delayMs: 250 });
  const [kind, setKind] = useUrlParam('kind');
  const [maker, setMaker] = useUrlParam('maker');
  const [material, setMaterial] = useUrlParam('material');
  const [side, setSide] = useUrlParam('side');
  const [diameterUm, setDiameter] = useUrlParam('diameterUm');
  const [status, setStatus] = useUrlParam('status');
  const [sterile, setSterile] = useUrlParam('sterile');
  const [missing, setMissing] = useUrlParam('missing');
  const [page, setPage] = useUrlParam('list-page', '1');
  const values = { q, kind, maker, material, side, diameterUm, status, sterile, missing };
  const params = useSearchParams();
  const query = servedQuery(CATALOGUE_NAMES, (name) =>
    name in values ? values[name as keyof typeof values] || null : params.get(name),
  );
  const { answer, failed } = useServed('/api/v1/catalogue/search', query, first, firstQuery);
  const { rows, found } = answer;
  const narrowed = SEARCH_NAMES.filter((name) => values[name] !== '').length;
  const more = [material, side, sterile, missing].filter((value) => value !== '').length;

  const set = (change: (value: string) => void) => (value: string) => {
    change(value);
    if (page !== '1') setPage('1');
  };
  const reset = () => {
    for (const change of [
      setQ,
      setKind,
      setMaker,
      setMaterial,
      setSide,
      setDiameter,
      setStatus,
      setSterile,
      setMissing,
    ])
      change('');
    setPage('1');
  };

  return (
    <div className={styles.list}>
      <FilterBar
        label="Search the catalogue"
        summary={summaryOf(found, facets.total, narrowed > 0)}
        reset={
          narrowed > 0 ? (
            <Button kind="quiet" onClick={reset}>
              Show everything
            </Button>
          ) : null
        }
      >
        <SearchField
          name="q"
          label="Search"
          value={q}
          onValue={set(setQ)}
          placeholder="code, name, nickname, size, GTIN"
        />
        <SelectField
          name="kind"
          label="Kind"
          blank="Any"
          value={kind}
          onValue={set(setKind)}
          options={facets.kinds
            .map((one) => ({ value: one, label: sentenceCase(KIND_WORDS[one as ItemKind]) }))
            .sort((a, b) => a.label.localeCompare(b.label))}
        />
        <SelectField
          name="maker"
          label="Maker"
          blank="Any"
          value={maker}
          onValue={set(setMaker)}
          options={facets.makers.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <SelectField
          name="diameterUm"
          label="Thread, bit or bore"
          blank="Any"
          value={diameterUm}
          onValue={set(setDiameter)}
          options={facets.diametersUm.map((um) => ({ value: String(um), label: `${writeMm(um)} mm` }))}
        />
        <SelectField
          name="status"
          label="Status"
          blank="Any"
          value={status}
          onValue={set(setStatus)}
          options={[
            { value: 'current', label: 'Current' },
            { value: 'withdrawn', label: 'Withdrawn' },
            { value: 'recalled', label: 'Recalled' },
          ]}
        />
      </FilterBar>
      <Disclosure summary={more === 0 ? 'More filters' : `More filters: ${more} in use`} open={more > 0}>
        <div className={styles.more}>
          <SelectField
            name="material"
            label="Material"
            blank="Any"
            value={material}
            onValue={set(setMaterial)}
            options={facets.materials.map((one) => ({ value: one, label: MATERIAL_WORDS[one as Material] }))}
          />
          <SelectField
            name="side"
            label="Side"
            blank="Any"
            value={side}
            onValue={set(setSide)}
            options={(['left', 'right', 'either'] as const).map((one) => ({
              value: one,
              label: sentenceCase(SIDE_WORDS[one]),
            }))}
          />
          <SelectField
            name="sterile"
            label="Supplied sterile"
            blank="Any"
            value={sterile}
            onValue={set(setSterile)}
            options={yesNo}
          />
          <SelectField
            name="missing"
            label="Values"
            blank="Any"
            value={missing}
            onValue={set(setMissing)}
            options={[{ value: 'yes', label: 'Some not stated' }]}
          />
        </div>
      </Disclosure>
      {failed ? <NotAnswered /> : null}
      {rows.length === 0 ? (
        facets.total === 0 ? (
          <EmptyState title="The catalogue is empty">Add the first item, or load the demo.</EmptyState>
        ) : (
          <EmptyState title="Nothing matches" action={<Button onClick={reset}>Show everything</Button>}>
            No item has{' '}
            {q.trim() === ''
              ? 'all of these'
              : `“${q.trim().slice(0, 60)}” in its code, name, nickname, maker, sizes or GTIN`}
            . Fewer words, or fewer filters, find more.
          </EmptyState>
        )
      ) : (
        <Results rows={rows} found={found} />
      )}
    </div>
  );
}

/** Apart from the filters, so that a letter typed draws no row again until there are other rows. */
const Results = memo(function Results({ rows, found }: ServedItems) {
  return (
    <DataTable
      caption="Items"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={(row) => row.id}
      rowHref={(row) => `/catalogue/${row.id}`}
      rowTone={(row) =>
        row.status === 'recalled' ? 'stop' : row.status === 'withdrawn' ? 'attention' : null
      }
      urlKey="list"
      pageSize={ITEMS_A_PAGE}
      served={{ total: found }}
      dense
    />
  );
});

function summaryOf(found: number, total: number, narrowed: boolean): string {
  if (!narrowed) return total === 1 ? '1 item' : `${total} items`;
  return `${found} of ${total} items`;
}
