'use client';

import Link from 'next/link';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { Together } from '@/lib/review/together';
import { togetherWords } from '@/lib/wording/together';

type Row = Together & { code: string; name: string };

const COLUMNS: Column<Row>[] = [
  {
    id: 'configuration',
    header: 'Configuration',
    value: (row) => row.code,
    cell: (row) => <Link href={`/configurations/${row.otherId}/review`}>{`${row.code} ${row.name}`}</Link>,
    width: 'wide',
  },
  { id: 'both', header: 'Cases together', align: 'end', value: (row) => row.both },
  {
    id: 'ofOwn',
    header: 'Of the cases with this one',
    unit: '%',
    align: 'end',
    value: (row) => row.shareOfOwn,
    cell: (row) => `${(row.shareOfOwn * 100).toFixed(1)} of ${row.own}`,
  },
  {
    id: 'ofOther',
    header: 'Of the cases with the other',
    unit: '%',
    align: 'end',
    value: (row) => row.shareOfOther,
    cell: (row) => `${(row.shareOfOther * 100).toFixed(1)} of ${row.other}`,
  },
  {
    id: 'expected',
    header: 'Expected by chance',
    align: 'end',
    value: (row) => row.expected,
    cell: (row) => row.expected.toFixed(1),
  },
  {
    id: 'said',
    header: 'What that says',
    value: (row) => row.verdict,
    cell: (row) =>
      row.verdict === 'oftener' ? (
        <>
          <Status tone="attention">Oftener than by chance</Status> {togetherWords(row)}
        </>
      ) : (
        togetherWords(row)
      ),
    width: 'wide',
  },
];

/** Configurations opened in the same cases as this one. */
export function TogetherTable({ rows }: { rows: Row[] }) {
  return (
    <DataTable
      caption="Opened together"
      hideCaption
      columns={COLUMNS}
      rows={rows}
      rowKey={({ otherId }) => otherId}
      tools={false}
      pageSize={10}
      urlKey="together"
      empty="No other configuration was opened in the same cases."
    />
  );
}
