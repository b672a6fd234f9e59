'use client';

import { useSearchParams } from 'next/navigation';
import { FilterBar } from '@/app/_ui/filter-bar';
import { NotAnswered } from '@/app/_ui/not-answered';
import { SearchField } from '@/app/_ui/search-field';
import { SelectField } from '@/app/_ui/select-field';
import { servedQuery } from '@/app/_ui/served-rows';
import { useUrlParam } from '@/app/_ui/url-state';
import { useServed } from '@/app/_ui/use-served';
import { ItemTable } from './item-table';
import { LotTable } from './lot-table';
import type { ServedStock } from './served-stock';
import { STOCK_NAMES } from './stock-values';

const SHOW = [
  { value: 'all', label: 'everything' },
  { value: 'past', label: 'past use-by' },
  { value: 'soon', label: 'use-by soon' },
  { value: 'held', label: 'held' },
  { value: 'consignment', label: 'consignment' },
  { value: 'nothingFree', label: 'nothing to take today' },
  { value: 'none', label: 'no use-by stated' },
];

/** The shelves as a table: by item or by heap, found by item, lot or place, narrowed to what needs looking at. */
export function StockTables({ first, firstQuery }: { first: ServedStock; firstQuery: string }) {
  const params = useSearchParams();
  const query = servedQuery(STOCK_NAMES, (name) => params.get(name));
  const { answer, failed } = useServed('/api/v1/stock/list', query, first, firstQuery);
  const [search, setSearch] = useUrlParam('q', '', { delayMs: 150 });
  const [show, setShow] = useUrlParam('show', 'all');
  const [view, setView] = useUrlParam('view', 'items');
  const [itemsPage, setItemsPage] = useUrlParam('items-page', '1');
  const [lotsPage, setLotsPage] = useUrlParam('stock-page', '1');
  const set = (change: (value: string) => void) => (value: string) => {
    change(value);
    if (itemsPage !== '1') setItemsPage('1');
    if (lotsPage !== '1') setLotsPage('1');
  };
  return (
    <>
      <FilterBar
        label="Find stock"
        summary={`${answer.found} of ${answer.total} ${answer.view === 'items' ? 'items' : 'heaps'}`}
      >
        <SearchField
          name="q"
          label="Search"
          placeholder="item, lot or place"
          value={search}
          onValue={set(setSearch)}
        />
        <SelectField name="show" label="Show" value={show} onValue={set(setShow)} options={SHOW} />
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
      {failed ? <NotAnswered /> : null}
      {answer.view === 'items' ? (
        <ItemTable rows={answer.rows} total={answer.found} />
      ) : (
        <LotTable rows={answer.rows} total={answer.found} />
      )}
    </>
  );
}
