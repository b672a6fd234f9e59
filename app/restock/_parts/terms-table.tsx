'use client';

import { useMemo, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { NotStated } from '@/app/_ui/not-stated';
import { Status } from '@/app/_ui/status';
import { TermsDialog, type TermsOf } from './terms-dialog';

interface Row extends TermsOf {
  changed: string | null;
}

const days = (value: number | null) => (value === null ? null : `${value} ${value === 1 ? 'day' : 'days'}`);

const COLUMNS: Column<Row>[] = [
  { id: 'name', header: 'Maker or item', value: (row) => row.of.name },
  { id: 'kind', header: 'Of', value: (row) => (row.of.kind === 'maker' ? 'maker' : 'item'), width: 'fit' },
  {
    id: 'lead',
    header: 'Lead',
    align: 'end',
    value: (row) => row.leadDays,
    cell: (row) =>
      row.leadDays === null && row.of.kind === 'maker' ? (
        <Status tone="unknown" look="plain">
          not stated
        </Status>
      ) : (
        (days(row.leadDays) ?? 'as the maker')
      ),
    width: 'fit',
  },
  {
    id: 'spread',
    header: 'Spread of the lead',
    align: 'end',
    value: (row) => row.leadSdDays,
    cell: (row) => (row.leadSdDays === null ? 'none' : `± ${days(row.leadSdDays)}`),
    width: 'fit',
  },
  {
    id: 'review',
    header: 'Days between orders',
    align: 'end',
    value: (row) => row.reviewDays,
    cell: (row) => row.reviewDays ?? 'as set',
    width: 'fit',
  },
  {
    id: 'service',
    header: 'Service level',
    align: 'end',
    value: (row) => row.servicePercent,
    cell: (row) => (row.servicePercent === null ? 'by class' : `${row.servicePercent} %`),
    width: 'fit',
  },
  {
    id: 'kept',
    header: 'Kept',
    value: (row) => (row.consigned === null ? null : row.consigned ? 'on consignment' : 'bought, ours'),
    cell: (row) =>
      row.consigned === null
        ? row.of.kind === 'maker'
          ? 'bought'
          : 'as the maker'
        : row.consigned
          ? 'on consignment'
          : 'bought, ours',
    width: 'fit',
  },
  {
    id: 'shelf',
    header: 'Good for as it comes',
    align: 'end',
    value: (row) => row.shelfLifeDays,
    cell: (row) => days(row.shelfLifeDays) ?? <NotStated />,
    width: 'fit',
  },
  { id: 'changed', header: 'Stated by', value: (row) => row.changed },
];

/** Terms of every maker and of single items; whoever keeps them changes them here. */
export function TermsTable({
  rows,
  items,
}: {
  rows: Row[];
  /** Items without terms of their own, to choose one from; `null` for who only reads. */
  items: { value: string; label: string; note: string }[] | null;
}) {
  const [open, setOpen] = useState<TermsOf | 'item' | null>(null);
  const mayKeep = items !== null;
  const columns = useMemo((): Column<Row>[] => {
    if (!mayKeep) return COLUMNS;
    const change: Column<Row> = {
      id: 'change',
      header: 'Change',
      value: (row) => row.of.name,
      sortable: false,
      hideable: false,
      width: 'fit',
      cell: (row) => (
        <Button size="small" aria-label={`Change the terms of ${row.of.name}`} onClick={() => setOpen(row)}>
          Change
        </Button>
      ),
    };
    return [...COLUMNS, change];
  }, [mayKeep]);
  return (
    <>
      {mayKeep ? (
        <ButtonRow>
          <Button onClick={() => setOpen('item')}>State terms of one item</Button>
        </ButtonRow>
      ) : null}
      <DataTable
        caption="Terms of supply"
        hideCaption
        columns={columns}
        rows={rows}
        rowKey={(row) => row.of.id}
        urlKey="terms"
        empty="There is no maker."
      />
      {open !== null && items !== null ? (
        <TermsDialog terms={open === 'item' ? null : open} items={items} onClose={() => setOpen(null)} />
      ) : null}
    </>
  );
}
