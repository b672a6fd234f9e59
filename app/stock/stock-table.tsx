'use client';

import { useMemo } from 'react';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { FilterBar } from '@/app/_ui/filter-bar';
import { SearchField } from '@/app/_ui/search-field';
import { SelectField } from '@/app/_ui/select-field';
import { Status } from '@/app/_ui/status';
import { useUrlParam } from '@/app/_ui/url-state';
import type { ShelfLife } from '@/lib/stock/shelfLife';
import { USE_BY_WORDS } from '@/lib/wording/stock';

export interface StockTableRow {
  id: string;
  itemId: string;
  code: string;
  name: string;
  maker: string;
  form: string;
  quantity: number;
  lot: string | null;
  useBy: string | null;
  state: ShelfLife;
  owner: string;
  place: string;
  held: string | null;
  status: 'current' | 'withdrawn' | 'recalled';
}

const TONES = { past: 'stop', soon: 'attention', good: 'good', none: 'neutral' } as const;

const columns: Column<StockTableRow>[] = [
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'fit' },
  {
    id: 'name',
    header: 'Name',
    value: (row) => row.name,
    width: 'wide',
    cell: (row) =>
      row.status === 'current' ? (
        row.name
      ) : (
        <>
          {row.name} <Status tone="stop">{row.status}</Status>
        </>
      ),
  },
  { id: 'quantity', header: 'Pieces', align: 'end', value: (row) => row.quantity, width: 'fit' },
  { id: 'form', header: 'Form', value: (row) => row.form },
  { id: 'lot', header: 'Lot', value: (row) => row.lot },
  { id: 'useBy', header: 'Use-by', value: (row) => row.useBy, width: 'fit' },
  {
    id: 'state',
    header: 'Use-by stands',
    value: (row) => USE_BY_WORDS[row.state],
    cell: (row) => (
      <Status tone={TONES[row.state]} look={row.state === 'past' || row.state === 'soon' ? 'tag' : 'plain'}>
        {USE_BY_WORDS[row.state]}
      </Status>
    ),
  },
  {
    id: 'held',
    header: 'Held, because',
    value: (row) => row.held ?? '',
    cell: (row) => (row.held === null ? '' : <Status tone="attention">{row.held}</Status>),
  },
  { id: 'place', header: 'Place', value: (row) => row.place },
  { id: 'owner', header: 'Owner', value: (row) => row.owner },
  { id: 'maker', header: 'Maker', value: (row) => row.maker, hiddenAtFirst: true },
];

/** The shelves as a table: search by item, lot or place; narrow to what needs looking at. */
export function StockTable({ rows }: { rows: StockTableRow[] }) {
  const [search, setSearch] = useUrlParam('q');
  const [show, setShow] = useUrlParam('show', 'all');
  const shown = useMemo(() => {
    const words = search.toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean);
    return rows.filter((row) => {
      const text =
        `${row.code} ${row.name} ${row.maker} ${row.lot ?? ''} ${row.place} ${row.form} ${row.owner}`.toLocaleLowerCase(
          'en-GB',
        );
      if (!words.every((word) => text.includes(word))) return false;
      if (show === 'held') return row.held !== null;
      return show === 'all' || row.state === show;
    });
  }, [rows, search, show]);
  return (
    <>
      <FilterBar label="Find stock" summary={`${shown.length} of ${rows.length} lots`}>
        <SearchField
          name="q"
          label="Search"
          placeholder="item, lot or place"
          value={search}
          onValue={setSearch}
        />
        <SelectField
          name="show"
          label="Show"
          value={show}
          onValue={setShow}
          options={[
            { value: 'all', label: 'everything' },
            { value: 'past', label: 'past use-by' },
            { value: 'soon', label: 'use-by soon' },
            { value: 'held', label: 'held' },
            { value: 'none', label: 'no use-by stated' },
          ]}
        />
      </FilterBar>
      <DataTable
        caption="Stock"
        hideCaption
        columns={columns}
        rows={shown}
        rowKey={(row) => row.id}
        rowHref={(row) => `/catalogue/${row.itemId}`}
        rowTone={(row) => (row.state === 'past' ? 'stop' : row.held !== null ? 'attention' : null)}
        urlKey="stock"
        empty="Nothing on the shelves answers to this."
      />
    </>
  );
}
