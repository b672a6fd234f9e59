'use client';

import Link from 'next/link';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';

interface RemovedRow {
  itemId: string;
  name: string;
  version: number;
  since: string;
  cases: number | null;
  asked: number | null;
  last: { caseId: string; reference: string } | null;
}

const REMOVED: Column<RemovedRow>[] = [
  {
    id: 'item',
    header: 'Item',
    value: (row) => row.name,
    cell: (row) => <Link href={`/catalogue/${row.itemId}`}>{row.name}</Link>,
    width: 'wide',
  },
  {
    id: 'since',
    header: 'Taken out',
    value: (row) => row.since,
    cell: (row) => `${row.since}, by version ${row.version}`,
  },
  {
    id: 'cases',
    header: 'Cases since',
    align: 'end',
    value: (row) => row.cases,
    cell: (row) => row.cases ?? 'not known',
  },
  {
    id: 'asked',
    header: 'Asked for all the same',
    align: 'end',
    value: (row) => row.asked,
    cell: (row) => row.asked ?? 'not known',
  },
  {
    id: 'last',
    header: 'Last in',
    value: (row) => row.last?.reference ?? '',
    cell: (row) =>
      row.last === null ? '' : <Link href={`/cases/${row.last.caseId}`}>{row.last.reference}</Link>,
  },
];

/** What was taken out by an earlier version, and how often cases asked for it since. */
export function RemovedTable({ rows }: { rows: RemovedRow[] }) {
  return (
    <DataTable
      caption="Asked for after it was taken out"
      hideCaption
      columns={REMOVED}
      rows={rows}
      rowKey={({ itemId }) => itemId}
      tools={false}
      empty="No version has taken anything out."
    />
  );
}

interface SetUseRow {
  setId: string;
  code: string;
  cases: number;
  lastOn: string | null;
  unused: number;
}

const SETS: Column<SetUseRow>[] = [
  {
    id: 'code',
    header: 'Set',
    value: (row) => row.code,
    cell: (row) => <Link href={`/sets/${row.setId}`}>{row.code}</Link>,
    width: 'fit',
  },
  {
    id: 'cases',
    header: 'Cases',
    align: 'end',
    value: (row) => row.cases,
    cell: (row) => (row.cases === 0 ? <Status tone="attention">never opened</Status> : row.cases),
  },
  {
    id: 'last',
    header: 'Last',
    value: (row) => row.lastOn ?? '',
    cell: (row) => row.lastOn ?? 'none in this time',
  },
  {
    id: 'unused',
    header: 'Opened and nothing of it used',
    unit: 'cases',
    align: 'end',
    value: (row) => row.unused,
  },
];

/** Each set of the configuration: never opened, opened, opened and unused. */
export function SetUseTable({ rows }: { rows: SetUseRow[] }) {
  return (
    <DataTable
      caption="The sets of it"
      hideCaption
      columns={SETS}
      rows={rows}
      rowKey={({ setId }) => setId}
      tools={false}
      empty="No set follows it."
    />
  );
}

interface AlikeRow {
  id: string;
  code: string;
  name: string;
  sharePercent: number;
  shared: number;
  merged: number;
  onlyFirst: number;
  onlySecond: number;
}

const ALIKE_COLUMNS: Column<AlikeRow>[] = [
  {
    id: 'code',
    header: 'Configuration',
    value: (row) => row.code,
    cell: (row) => <Link href={`/configurations/${row.id}/review`}>{`${row.code} ${row.name}`}</Link>,
  },
  {
    id: 'share',
    header: 'Alike',
    unit: '%',
    align: 'end',
    value: (row) => row.sharePercent,
    cell: (row) => row.sharePercent.toFixed(1),
  },
  { id: 'shared', header: 'Pieces both hold', align: 'end', value: (row) => row.shared },
  { id: 'first', header: 'Only this one', align: 'end', value: (row) => row.onlyFirst },
  { id: 'second', header: 'Only the other', align: 'end', value: (row) => row.onlySecond },
  { id: 'merged', header: 'One that serves both', unit: 'pieces', align: 'end', value: (row) => row.merged },
];

/** Configurations that could be one, with what that one would hold. */
export function AlikeTable({ rows }: { rows: AlikeRow[] }) {
  return (
    <DataTable
      caption="Much like it"
      hideCaption
      columns={ALIKE_COLUMNS}
      rows={rows}
      rowKey={({ id }) => id}
      tools={false}
      empty="None."
    />
  );
}
