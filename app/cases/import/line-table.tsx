'use client';

import Link from 'next/link';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import styles from './import.module.css';
import type { ImportLine, LineKind } from './import-view';

const WORDS: Record<LineKind, { tone: Tone; would: string; did: string }> = {
  new: { tone: 'attention', would: 'New', did: 'Booked' },
  moved: { tone: 'attention', would: 'Moves', did: 'Moved' },
  unchanged: { tone: 'neutral', would: 'As it is', did: 'As it is' },
};

type Line = ImportLine & { done: boolean };
const fixed = { hideable: false } as const;
const columns: Column<Line>[] = [
  { ...fixed, id: 'row', header: 'Row', value: (line) => line.row, align: 'end', width: 'fit' },
  {
    ...fixed,
    id: 'kind',
    header: 'What happens',
    value: (line) => WORDS[line.kind].would,
    cell: ({ kind, done }) => (
      <Status tone={done && kind !== 'unchanged' ? 'good' : WORDS[kind].tone}>
        {done ? WORDS[kind].did : WORDS[kind].would}
      </Status>
    ),
    width: 'fit',
  },
  {
    ...fixed,
    id: 'reference',
    header: 'Case',
    value: (line) => line.reference ?? 'new',
    cell: ({ reference, caseId }) =>
      reference === null ? 'new' : <Link href={`/cases/${caseId}`}>{reference}</Link>,
    width: 'code',
  },
  {
    ...fixed,
    id: 'when',
    header: 'Time',
    value: (line) => line.startsAt,
    cell: (line) => (
      <span className={styles.lineWords}>
        <span>{line.when}</span>
        {line.before === null ? null : <span className={styles.soft}>{`was ${line.before}`}</span>}
      </span>
    ),
    width: 'wide',
  },
  { ...fixed, id: 'theatre', header: 'Theatre', value: (line) => line.theatre },
  { ...fixed, id: 'what', header: 'Region and side', value: (line) => line.what },
  { ...fixed, id: 'surgeon', header: 'Surgeon', value: (line) => line.surgeon },
  { ...fixed, id: 'urgency', header: 'Urgency', value: (line) => line.urgency, width: 'fit' },
  {
    ...fixed,
    id: 'remarks',
    header: 'To be seen',
    value: (line) => line.remarks.join(' '),
    cell: ({ remarks }) => (remarks.length > 0 ? remarks.join(' ') : 'nothing'),
    width: 'phrase',
  },
];

/** Every row that could be read, with what becomes of it. */
export function LineTable({ lines, done }: { lines: readonly ImportLine[]; done: boolean }) {
  return (
    <Section title="Row by row" note={`${lines.length} ${lines.length === 1 ? 'row' : 'rows'} read`}>
      <DataTable
        caption={done ? 'What was done with each row' : 'What would be done with each row'}
        hideCaption
        columns={columns}
        rows={lines.map((line) => ({ ...line, done }))}
        rowKey={(line) => String(line.row)}
      />
    </Section>
  );
}
