'use client';

import { useMemo } from 'react';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { FilterBar } from '@/app/_ui/filter-bar';
import { SearchField } from '@/app/_ui/search-field';
import { SelectField } from '@/app/_ui/select-field';
import { useUrlParam } from '@/app/_ui/url-state';
import type { AccountOnScreen } from '@/db/queries/consignment/owners';

type Row = AccountOnScreen & { unaccounted: number };

const figure = (id: keyof Row, header: string): Column<Row> => ({
  id,
  header,
  align: 'end',
  value: (row) => row[id] as number,
  width: 'fit',
});

const COLUMNS: Column<Row>[] = [
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'code' },
  { id: 'name', header: 'Name', value: (row) => row.name, width: 'wide' },
  { id: 'lot', header: 'Lot', value: (row) => row.lot, width: 'fit' },
  figure('received', 'Came'),
  figure('onShelf', 'On the shelf'),
  figure('withCases', 'With cases'),
  figure('intoSlots', 'Into slots'),
  figure('implanted', 'Implanted'),
  figure('wasted', 'Wasted'),
  figure('notFound', 'Not found'),
  figure('sentBack', 'Sent back'),
  figure('unaccounted', 'Unaccounted'),
];

const lies = ({ onShelf, withCases, intoSlots }: Row) => onShelf + withCases + intoSlots > 0;

/** Of each lot what came and where it went; those of which something is still here at first. */
export function AccountTable({ rows }: { rows: Row[] }) {
  const [search, setSearch] = useUrlParam('lot');
  const [show, setShow] = useUrlParam('lots', 'here');
  const shown = useMemo(() => {
    const words = search.toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean);
    return rows.filter((row) => {
      const text = `${row.code} ${row.name} ${row.lot ?? ''}`.toLocaleLowerCase('en-GB');
      return (show === 'all' || lies(row)) && words.every((word) => text.includes(word));
    });
  }, [rows, search, show]);
  return (
    <>
      <FilterBar label="Find lots" summary={`${shown.length} of ${rows.length} lots`}>
        <SearchField name="lot" label="Search" placeholder="item or lot" value={search} onValue={setSearch} />
        <SelectField
          name="lots"
          label="Show"
          value={show}
          onValue={setShow}
          options={[
            { value: 'here', label: 'lots of which something is here' },
            { value: 'all', label: 'every lot' },
          ]}
        />
      </FilterBar>
      <DataTable
        caption="Lots, what came and where it went"
        hideCaption
        columns={COLUMNS}
        rows={shown}
        rowKey={(row) => `${row.itemId} ${row.lot ?? ''}`}
        rowHref={(row) => `/stock/${row.itemId}`}
        urlKey="accounts"
        empty="No lot answers to this."
      />
    </>
  );
}
