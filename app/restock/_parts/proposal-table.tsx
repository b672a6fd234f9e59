'use client';

import Link from 'next/link';
import { useMemo } from 'react';
import { Button } from '@/app/_ui/button';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { FilterBar } from '@/app/_ui/filter-bar';
import { SearchField } from '@/app/_ui/search-field';
import { SelectField } from '@/app/_ui/select-field';
import { Status } from '@/app/_ui/status';
import { useUrlParam } from '@/app/_ui/url-state';
import styles from '../restock.module.css';
import type { LineRow } from './line-row';

/** What a person makes of a line before approving: so many instead, and why. */
export type Changes = Record<string, { pieces: number; because: string }>;

const COLUMNS: Column<LineRow>[] = [
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'code' },
  { id: 'name', header: 'Name', value: (row) => row.name },
  {
    id: 'class',
    header: 'Must-have class',
    align: 'end',
    value: (row) => row.mustHaveClass,
    cell: (row) => row.mustHaveClass ?? 'in no set',
    width: 'fit',
  },
  {
    id: 'onHand',
    header: 'At hand',
    align: 'end',
    value: (row) => row.onHand,
    width: 'fit',
    hiddenAtFirst: true,
  },
  {
    id: 'onOrder',
    header: 'On order',
    align: 'end',
    value: (row) => row.onOrder,
    width: 'fit',
    hiddenAtFirst: true,
  },
  {
    id: 'committed',
    header: 'For booked cases',
    align: 'end',
    value: (row) => row.committed,
    width: 'fit',
    hiddenAtFirst: true,
  },
  {
    id: 'toRefill',
    header: 'To refill sets',
    align: 'end',
    value: (row) => row.toRefill,
    width: 'fit',
    hiddenAtFirst: true,
  },
];

const MAKER: Column<LineRow> = {
  id: 'maker',
  header: 'Maker',
  value: (row) => row.maker,
  hiddenAtFirst: true,
};

/** The lines of a proposal with their reasons; with `onChange`, each can be changed before it is approved. */
export function ProposalTable({
  rows,
  changes,
  onChange,
}: {
  rows: LineRow[];
  changes: Changes;
  onChange: ((row: LineRow) => void) | null;
}) {
  const [search, setSearch] = useUrlParam('q');
  const [show, setShow] = useUrlParam('show', 'all');
  const shown = useMemo(() => {
    const words = search.toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean);
    return rows.filter((row) => {
      const text = `${row.code} ${row.name} ${row.maker}`.toLocaleLowerCase('en-GB');
      if (!words.every((word) => text.includes(word))) return false;
      if (show === 'established') return row.established;
      if (show === 'open') return !row.established;
      return show === 'all' || String(row.mustHaveClass) === show;
    });
  }, [rows, search, show]);
  const columns = useMemo(() => columnsFor(changes, onChange), [changes, onChange]);
  return (
    <>
      <FilterBar label="Find lines" summary={`${shown.length} of ${rows.length} lines`}>
        <SearchField name="q" label="Search" placeholder="item or maker" value={search} onValue={setSearch} />
        <SelectField
          name="show"
          label="Show"
          value={show}
          onValue={setShow}
          options={[
            { value: 'all', label: 'everything' },
            { value: 'established', label: 'worked out from demand' },
            { value: 'open', label: 'how much to keep not established' },
            { value: '1', label: 'must-have class 1' },
            { value: '2', label: 'must-have class 2' },
            { value: '3', label: 'must-have class 3' },
            { value: '4', label: 'must-have class 4' },
          ]}
        />
      </FilterBar>
      <DataTable
        caption="Lines of the proposal"
        hideCaption
        columns={columns}
        rows={shown}
        rowKey={(row) => row.id}
        rowHref={(row) => `/catalogue/${row.itemId}`}
        urlKey="lines"
        empty="No line answers to this."
      />
    </>
  );
}

function columnsFor(changes: Changes, onChange: ((row: LineRow) => void) | null): Column<LineRow>[] {
  const pieces = (row: LineRow) => row.approved ?? changes[row.id]?.pieces ?? row.proposed;
  const order: Column<LineRow> = {
    id: 'order',
    header: 'Order',
    align: 'end',
    value: pieces,
    width: 'fit',
    cell: (row) => <OrderCell row={row} change={changes[row.id]} />,
  };
  const why: Column<LineRow> = {
    id: 'why',
    header: 'Why',
    value: (row) => row.sentence,
    sortable: false,
    width: 'wide',
    cell: (row) => <WhyCell row={row} />,
  };
  const change: Column<LineRow> = {
    id: 'change',
    header: 'Change',
    value: (row) => row.code,
    sortable: false,
    hideable: false,
    width: 'fit',
    cell: (row) => (
      <Button size="small" aria-label={`Change ${row.code}`} onClick={() => onChange?.(row)}>
        Change
      </Button>
    ),
  };
  return [...COLUMNS, order, why, MAKER, ...(onChange === null ? [] : [change])];
}

function OrderCell({ row, change }: { row: LineRow; change: Changes[string] | undefined }) {
  const pieces = row.approved ?? change?.pieces ?? row.proposed;
  const because = row.changedBecause ?? change?.because;
  return (
    <>
      <strong>{pieces}</strong>
      {because ? <span className={styles.changed}>{`Proposed ${row.proposed}. ${because}`}</span> : null}
    </>
  );
}

function WhyCell({ row }: { row: LineRow }) {
  return (
    <div className={styles.why}>
      {row.established ? null : (
        <Status tone="unknown" look="plain">
          not established
        </Status>
      )}{' '}
      {row.sentence}
      {row.model === null ? null : (
        <span className={styles.more}>
          {`${row.model}. `}
          {row.fit === null ? null : `Fit: ${row.fit}.`}
        </span>
      )}
      <span className={styles.more}>
        <Link href={`/calculations/reorder?of=${row.id}`} aria-label={`The working of ${row.code}`}>
          The working
        </Link>
      </span>
    </div>
  );
}
