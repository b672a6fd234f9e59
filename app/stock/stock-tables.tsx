'use client';

import { useMemo } from 'react';
import { FilterBar } from '@/app/_ui/filter-bar';
import { SearchField } from '@/app/_ui/search-field';
import { SelectField } from '@/app/_ui/select-field';
import { useUrlParam } from '@/app/_ui/url-state';
import { ItemTable } from './item-table';
import { LotTable } from './lot-table';
import type { ItemTableRow, LotTableRow } from './stock-rows';

const SHOW = [
  { value: 'all', label: 'everything' },
  { value: 'past', label: 'past use-by' },
  { value: 'soon', label: 'use-by soon' },
  { value: 'held', label: 'held' },
  { value: 'consignment', label: 'consignment' },
  { value: 'nothingFree', label: 'nothing to take today' },
  { value: 'none', label: 'no use-by stated' },
];

const lotShown = (row: LotTableRow, show: string): boolean => {
  switch (show) {
    case 'all':
      return true;
    case 'held':
      return row.held !== null;
    case 'consignment':
      return row.owner.startsWith('consignment');
    case 'nothingFree':
      return row.turn === null;
    default:
      return row.state === show;
  }
};

const itemShown = (row: ItemTableRow, show: string): boolean => {
  switch (show) {
    case 'past':
    case 'soon':
    case 'held':
    case 'consignment':
    case 'none':
      return row[show] > 0;
    case 'nothingFree':
      return row.next === null;
    default:
      return true;
  }
};

/** The shelves as a table: by item or by heap, found by item, lot or place, narrowed to what needs looking at. */
export function StockTables({
  view,
  items,
  lots,
}: {
  view: 'items' | 'lots';
  items: ItemTableRow[];
  lots: LotTableRow[];
}) {
  const [search, setSearch] = useUrlParam('q');
  const [show, setShow] = useUrlParam('show', 'all');
  const [, setView] = useUrlParam('view', 'items', { server: true });
  const words = useMemo(() => search.toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean), [search]);
  const found = <R extends { text: string }>(rows: R[]) =>
    rows.filter(({ text }) => words.every((word) => text.includes(word)));
  const itemsShown = found(items).filter((row) => itemShown(row, show));
  const lotsShown = found(lots).filter((row) => lotShown(row, show));
  const summary =
    view === 'items'
      ? `${itemsShown.length} of ${items.length} items`
      : `${lotsShown.length} of ${lots.length} heaps`;
  return (
    <>
      <FilterBar label="Find stock" summary={summary}>
        <SearchField
          name="q"
          label="Search"
          placeholder="item, lot or place"
          value={search}
          onValue={setSearch}
        />
        <SelectField name="show" label="Show" value={show} onValue={setShow} options={SHOW} />
        <SelectField
          name="view"
          label="Listed by"
          value={view}
          onValue={setView}
          options={[
            { value: 'items', label: 'item' },
            { value: 'lots', label: 'lot and place' },
          ]}
        />
      </FilterBar>
      {view === 'items' ? <ItemTable rows={itemsShown} /> : <LotTable rows={lotsShown} />}
    </>
  );
}
