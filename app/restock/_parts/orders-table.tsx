'use client';

import { useMemo } from 'react';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { FilterBar } from '@/app/_ui/filter-bar';
import { NotStated } from '@/app/_ui/not-stated';
import { SearchField } from '@/app/_ui/search-field';
import { SelectField } from '@/app/_ui/select-field';
import { Status } from '@/app/_ui/status';
import { useUrlParam } from '@/app/_ui/url-state';
import { orderStands } from './order-stands';

interface Row {
  id: string;
  number: string;
  maker: string;
  state: 'open' | 'closed';
  orderedBy: string;
  orderedOn: string;
  expectedOn: string | null;
  late: boolean;
  lines: number;
  ordered: number;
  here: number;
  pence: number | null;
  closedBecause: string | null;
}

const COLUMNS: Column<Row>[] = [
  { id: 'number', header: 'Order', value: (row) => row.number, width: 'code' },
  { id: 'maker', header: 'Maker', value: (row) => row.maker },
  {
    id: 'stands',
    header: 'Stands',
    value: (row) => orderStands(row).word,
    cell: (row) => {
      const { tone, word } = orderStands(row);
      return (
        <Status tone={tone} look="plain">
          {word}
        </Status>
      );
    },
    width: 'fit',
  },
  {
    id: 'here',
    header: 'Came',
    align: 'end',
    value: (row) => row.here / row.ordered,
    cell: (row) => `${row.here} of ${row.ordered}`,
    width: 'fit',
  },
  { id: 'lines', header: 'Lines', align: 'end', value: (row) => row.lines, width: 'fit' },
  { id: 'expected', header: 'Expected', value: (row) => row.expectedOn, width: 'fit' },
  {
    id: 'ordered',
    header: 'Ordered',
    value: (row) => row.number,
    cell: (row) => row.orderedOn,
    width: 'fit',
  },
  { id: 'by', header: 'Approved by', value: (row) => row.orderedBy },
  {
    id: 'value',
    header: 'Value',
    unit: '£',
    align: 'end',
    value: (row) => row.pence,
    cell: (row) => (row.pence === null ? <NotStated /> : (row.pence / 100).toFixed(2)),
    width: 'fit',
  },
  { id: 'because', header: 'Closed, because', value: (row) => row.closedBecause ?? '' },
];

/** Every order, the newest first. */
export function OrdersTable({ rows }: { rows: Row[] }) {
  const [search, setSearch] = useUrlParam('q');
  const [show, setShow] = useUrlParam('show', 'all');
  const shown = useMemo(() => {
    const words = search.toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean);
    return rows.filter((row) => {
      const text = `${row.number} ${row.maker} ${row.orderedBy}`.toLocaleLowerCase('en-GB');
      if (!words.every((word) => text.includes(word))) return false;
      return show === 'all' || (show === 'late' ? row.late : row.state === show);
    });
  }, [rows, search, show]);
  return (
    <>
      <FilterBar label="Find orders" summary={`${shown.length} of ${rows.length} orders`}>
        <SearchField
          name="q"
          label="Search"
          placeholder="order or maker"
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
            { value: 'open', label: 'open' },
            { value: 'late', label: 'expected before today' },
            { value: 'closed', label: 'closed' },
          ]}
        />
      </FilterBar>
      <DataTable
        caption="Orders"
        hideCaption
        columns={COLUMNS}
        rows={shown}
        rowKey={(row) => row.id}
        rowHref={(row) => `/restock/orders/${row.id}`}
        rowTone={(row) => (row.late ? 'attention' : null)}
        urlKey="orders"
        sort="-number"
        empty="No order answers to this."
      />
    </>
  );
}
