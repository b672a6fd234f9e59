'use client';

import { useMemo } from 'react';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { FilterBar } from '@/app/_ui/filter-bar';
import { SearchField } from '@/app/_ui/search-field';
import { SelectField } from '@/app/_ui/select-field';
import { useUrlParam } from '@/app/_ui/url-state';
import { percentWord } from '@/lib/wording/numbers';

interface Way {
  served: number;
  shortCases: number;
  meanStock: number;
  pastUseBy: number;
  orders: number;
}

interface Row {
  itemId: string;
  code: string;
  name: string;
  mustHaveClass: number | null;
  service: number;
  par: number;
  asked: number;
  cases: number;
  reorder: Way;
  against: Way;
}

const served = (row: Row, way: 'reorder' | 'against') =>
  row.asked === 0 ? null : row[way].served / row.asked;

/** Sorted by what these settings came to; the par level stands beside it. */
const both = (
  id: string,
  header: string,
  value: (way: Way, row: Row) => number | null,
  written: (value: number) => string = String,
): Column<Row> => ({
  id,
  header,
  align: 'end',
  width: 'fit',
  value: (row) => value(row.reorder, row),
  cell: (row) => {
    const [ours, par] = [value(row.reorder, row), value(row.against, row)];
    return ours === null || par === null ? null : `${written(ours)} (par ${written(par)})`;
  },
});

const COLUMNS: Column<Row>[] = [
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'code' },
  { id: 'name', header: 'Name', value: (row) => row.name, width: 'wide' },
  {
    id: 'class',
    header: 'Must-have class',
    align: 'end',
    value: (row) => row.mustHaveClass,
    cell: (row) => row.mustHaveClass ?? 'in no set',
    hiddenAtFirst: true,
  },
  {
    id: 'aim',
    header: 'Aimed at',
    align: 'end',
    value: (row) => row.service,
    cell: (row) => percentWord(row.service),
    width: 'fit',
  },
  { id: 'asked', header: 'Asked', unit: 'pieces', align: 'end', value: (row) => row.asked, width: 'fit' },
  both(
    'served',
    'Were there',
    (way, row) => served(row, way === row.reorder ? 'reorder' : 'against'),
    (share) => percentWord(share, 0),
  ),
  both('short', 'Cases short', ({ shortCases }) => shortCases),
  both(
    'stock',
    'Stock held',
    ({ meanStock }) => meanStock,
    (value) => value.toFixed(1),
  ),
  both('waste', 'Past use-by', ({ pastUseBy }) => pastUseBy),
  { ...both('orders', 'Orders', ({ orders }) => orders), hiddenAtFirst: true },
  {
    id: 'par',
    header: 'Par level',
    align: 'end',
    value: (row) => row.par,
    width: 'fit',
    hiddenAtFirst: true,
  },
];

/** What both ways would have done of each item. */
export function BacktestTable({ rows }: { rows: Row[] }) {
  const [search, setSearch] = useUrlParam('q');
  const [show, setShow] = useUrlParam('show', 'all');
  const shown = useMemo(() => {
    const words = search.toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean);
    return rows.filter((row) => {
      const text = `${row.code} ${row.name}`.toLocaleLowerCase('en-GB');
      if (!words.every((word) => text.includes(word))) return false;
      if (show === 'short') return row.reorder.shortCases > 0;
      if (show === 'worse') return row.reorder.served < row.against.served;
      return true;
    });
  }, [rows, search, show]);
  return (
    <>
      <FilterBar label="Find items" summary={`${shown.length} of ${rows.length} items`}>
        <SearchField name="q" label="Search" placeholder="item" value={search} onValue={setSearch} />
        <SelectField
          name="show"
          label="Show"
          value={show}
          onValue={setShow}
          options={[
            { value: 'all', label: 'everything' },
            { value: 'short', label: 'cases would have gone short' },
            { value: 'worse', label: 'served worse than by the par level' },
          ]}
        />
      </FilterBar>
      <DataTable
        caption="Item by item"
        hideCaption
        columns={COLUMNS}
        rows={shown}
        rowKey={(row) => row.itemId}
        rowHref={(row) => `/catalogue/${row.itemId}`}
        urlKey="items"
        sort="-asked"
        pageSize={50}
        empty="No item answers to this."
      />
    </>
  );
}
