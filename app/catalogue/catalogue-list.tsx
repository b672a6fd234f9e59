'use client';

import { memo, useEffect, useRef, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Disclosure } from '@/app/_ui/disclosure';
import { EmptyState } from '@/app/_ui/empty-state';
import { ErrorState } from '@/app/_ui/error-state';
import { FilterBar } from '@/app/_ui/filter-bar';
import { SearchField } from '@/app/_ui/search-field';
import { SelectField } from '@/app/_ui/select-field';
import { Status } from '@/app/_ui/status';
import { useUrlParam } from '@/app/_ui/url-state';
import type { CatalogueFacets, CatalogueRow } from '@/db/queries/catalogueSearch';
import { KIND_FIELDS } from '@/lib/catalogue/form/fields';
import type { ItemKind } from '@/lib/catalogue/item';
import type { Material, Side } from '@/lib/catalogue/measures';
import { queryOf, SEARCH_NAMES } from '@/lib/catalogue/search';
import { mmFromMicrons, writeMm } from '@/lib/quantities/length';
import { KIND_WORDS, MATERIAL_WORDS, SIDE_WORDS, sentenceCase } from '@/lib/wording/catalogue';
import styles from './catalogue.module.css';
import { itemStatusTag } from './item-status';
import { Thumb } from './thumb';

/** Kinds that have such a dimension at all; the others show a dash, which is not the same as not stated. */
const NONE = '–';
const HAS_DIAMETER: ReadonlySet<string> = new Set<ItemKind>([
  'screw',
  'tap',
  'drillBit',
  'guideWire',
  'drillSleeve',
]);
const HAS_LENGTH: ReadonlySet<string> = new Set(
  Object.entries(KIND_FIELDS).flatMap(([kind, fields]) =>
    fields.some(({ key }) => key === 'lengthUm') ? [kind] : [],
  ),
);

const columns: Column<CatalogueRow>[] = [
  { id: 'code', header: 'Code', value: (row) => row.code, width: 'fit' },
  {
    id: 'drawing',
    header: 'Drawing',
    value: () => '',
    cell: (row) => <Thumb id={row.id} revision={row.revision} />,
    sortable: false,
    width: 'fit',
  },
  {
    id: 'name',
    header: 'Name',
    value: (row) => row.name,
    cell: (row) => (
      <>
        {row.name}
        {row.nickname ? <span className={styles.nickname}> “{row.nickname}”</span> : null}
      </>
    ),
    width: 'wide',
  },
  { id: 'kind', header: 'Kind', value: (row) => KIND_WORDS[row.kind as ItemKind] },
  { id: 'maker', header: 'Maker', value: (row) => row.maker },
  {
    id: 'diameter',
    header: 'Diameter',
    unit: 'mm',
    align: 'end',
    value: (row) => (HAS_DIAMETER.has(row.kind) ? inMm(row.diameterUm) : NONE),
  },
  {
    id: 'length',
    header: 'Length',
    unit: 'mm',
    align: 'end',
    value: (row) => (HAS_LENGTH.has(row.kind) ? inMm(row.lengthUm) : NONE),
  },
  {
    id: 'side',
    header: 'Side',
    value: (row) => (row.side === null ? null : SIDE_WORDS[row.side as Side]),
    hiddenAtFirst: true,
  },
  {
    id: 'material',
    header: 'Material',
    value: (row) => (row.material === null ? null : MATERIAL_WORDS[row.material as Material]),
    hiddenAtFirst: true,
  },
  {
    id: 'sterile',
    header: 'Supplied sterile',
    value: (row) => (row.suppliedSterile === null ? null : row.suppliedSterile ? 'yes' : 'no'),
    hiddenAtFirst: true,
  },
  { id: 'mass', header: 'Mass', unit: 'g', align: 'end', value: (row) => row.massGrams, hiddenAtFirst: true },
  {
    id: 'cost',
    header: 'Unit cost',
    unit: '£',
    align: 'end',
    value: (row) => (row.unitCostPence === null ? null : row.unitCostPence / 100),
    cell: (row) => (row.unitCostPence === null ? null : (row.unitCostPence / 100).toFixed(2)),
    hiddenAtFirst: true,
  },
  { id: 'gtin', header: 'GTIN', value: (row) => row.gtin, hiddenAtFirst: true },
  {
    id: 'missing',
    header: 'Not stated',
    value: (row) => row.missing,
    cell: (row) =>
      row.missing === 0 ? (
        'nothing'
      ) : (
        <Status tone="unknown" look="plain">
          {row.missing === 1 ? '1 value' : `${row.missing} values`}
        </Status>
      ),
  },
  { id: 'status', header: 'Status', value: (row) => row.status, cell: (row) => itemStatusTag(row.status) },
];

function inMm(um: number | null): number | null {
  return um === null ? null : mmFromMicrons(um);
}

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
  first: CatalogueRow[];
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
  const { rows, failed } = useRows(values, first, firstQuery);
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
        summary={summaryOf(rows.length, facets.total, narrowed > 0)}
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
      {failed ? (
        <ErrorState
          title="The search could not be answered"
          action={<Button onClick={() => window.location.reload()}>Try again</Button>}
        >
          The list below is from before. Check the connection to the server.
        </ErrorState>
      ) : null}
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
        <Results rows={rows} />
      )}
    </div>
  );
}

/** Apart from the filters, so that a letter typed draws no row again until there are other rows. */
const Results = memo(function Results({ rows }: { rows: CatalogueRow[] }) {
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
      pageSize={30}
      dense
    />
  );
});

function summaryOf(found: number, total: number, narrowed: boolean): string {
  if (!narrowed) return total === 1 ? '1 item' : `${total} items`;
  return `${found} of ${total} items`;
}

/**
 * The rows for what is typed and chosen now. A newer question cancels the one before. `first` answers `firstQuery`: on the
 * way back from an item the page may be an older one than its address.
 */
function useRows(
  values: Record<string, string>,
  first: CatalogueRow[],
  firstQuery: string,
): { rows: CatalogueRow[]; failed: boolean } {
  const query = queryOf((name) => values[name]);
  const [answer, setAnswer] = useState({ rows: first, failed: false });
  const answered = useRef(firstQuery);

  useEffect(() => {
    if (answered.current === query) return;
    const asked = new AbortController();
    fetch(`/api/catalogue/search?${query}`, { signal: asked.signal })
      .then(async (response) => {
        if (!response.ok) throw new Error(String(response.status));
        const { rows } = (await response.json()) as { rows: CatalogueRow[] };
        answered.current = query;
        setAnswer({ rows, failed: false });
      })
      .catch(() => {
        if (!asked.signal.aborted) setAnswer((before) => ({ ...before, failed: true }));
      });
    return () => asked.abort();
  }, [query]);

  return answer;
}
