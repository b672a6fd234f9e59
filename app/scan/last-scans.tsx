'use client';

import Link from 'next/link';
import { type Column, DataTable } from '../_ui/data-table';
import { EmptyState } from '../_ui/empty-state';
import { Status } from '../_ui/status';
import type { ScanLine } from './scan-line';

const columns: Column<ScanLine>[] = [
  { id: 'at', header: 'When', value: (row) => row.doneAt, cell: (row) => row.at, width: 'fit' },
  {
    id: 'thing',
    header: 'What',
    value: (row) => row.thing,
    cell: (row) => (row.href ? <Link href={row.href}>{row.thing}</Link> : row.thing),
    width: 'name',
  },
  {
    id: 'verdict',
    header: 'Came to',
    value: (row) => row.word,
    cell: (row) => <Status tone={row.tone}>{row.word}</Status>,
    width: 'fit',
  },
  { id: 'sentence', header: 'What it means', value: (row) => row.sentence, width: 'wide' },
  { id: 'by', header: 'By', value: (row) => row.by, width: 'fit' },
  { id: 'how', header: 'How', value: (row) => row.how },
];

export function LastScans({ lines }: { lines: ScanLine[] }) {
  if (lines.length === 0)
    return (
      <EmptyState title="Nothing was scanned yet">
        Scan something, use the camera, or type a code above.
      </EmptyState>
    );
  return (
    <DataTable
      caption="Last scans"
      hideCaption
      columns={columns}
      rows={lines}
      rowKey={(row) => row.id}
      rowTone={(row) => (row.tone === 'stop' || row.tone === 'attention' ? row.tone : null)}
      sort="-at"
      urlKey="scans"
    />
  );
}
