'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Section } from '@/app/_ui/section';
import type { ProblemLine } from './import-view';

const fixed = { hideable: false } as const;
const columns: Column<ProblemLine>[] = [
  {
    ...fixed,
    id: 'row',
    header: 'Row',
    value: (line) => line.row ?? 0,
    cell: (line) => line.row ?? 'the file',
    align: 'end',
    width: 'fit',
  },
  {
    ...fixed,
    id: 'column',
    header: 'Column',
    value: (line) => line.column ?? '',
    cell: (line) => line.column ?? 'the row',
    width: 'name',
  },
  {
    ...fixed,
    id: 'value',
    header: 'As written',
    value: (line) => line.value ?? '',
    cell: writtenWords,
    width: 'phrase',
  },
  {
    ...fixed,
    id: 'sentence',
    header: 'What is wrong, and the way out',
    value: (line) => line.sentence,
    width: 'wide',
  },
];

function writtenWords({ row, value, withheld }: ProblemLine): string {
  if (withheld) return 'not shown: looks like a patient’s data';
  if (value !== null) return `“${value}”`;
  return row === null ? 'the headings' : 'nothing';
}

/** All that is in the way, cell by cell. */
export function ProblemTable({ lines }: { lines: readonly ProblemLine[] }) {
  return (
    <Section title="What is in the way">
      <DataTable
        caption="Problems, cell by cell"
        hideCaption
        columns={columns}
        rows={lines}
        rowKey={(line) => line.id}
        rowTone={() => 'stop'}
      />
    </Section>
  );
}
