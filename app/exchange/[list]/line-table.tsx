'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import styles from './exchange.module.css';
import type { LineView } from './exchange-view';

const WORDS: Record<LineView['kind'], { tone: Tone; would: string; did: string }> = {
  new: { tone: 'attention', would: 'New', did: 'Added' },
  changed: { tone: 'attention', would: 'Changes', did: 'Changed' },
  unchanged: { tone: 'neutral', would: 'As it is', did: 'As it is' },
};

type Line = LineView & { done: boolean };
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
  { ...fixed, id: 'name', header: 'What it is', value: (line) => line.name, width: 'phrase' },
  {
    ...fixed,
    id: 'changes',
    header: 'From → to',
    value: (line) => line.changes.join('; '),
    cell: ({ changes, kind }) =>
      changes.length === 0 ? (
        kind === 'new' ? (
          'was not here'
        ) : (
          'nothing'
        )
      ) : (
        <span className={styles.lineWords}>
          {changes.map((change) => (
            <span key={change}>{change}</span>
          ))}
        </span>
      ),
    width: 'wide',
  },
  {
    ...fixed,
    id: 'remarks',
    header: 'To be seen',
    value: (line) => line.remarks.join(' '),
    cell: ({ remarks }) => (remarks.length > 0 ? remarks.join(' ') : 'nothing'),
    width: 'phrase',
  },
];

/** Everything the file tells of, with what becomes of it; what stays as it is comes last. */
export function LineTable({
  lines,
  more,
  done,
}: {
  lines: readonly LineView[];
  more: number;
  done: boolean;
}) {
  const note = `${lines.length + more} in the file${more > 0 ? `, the first ${lines.length} shown` : ''}`;
  return (
    <Section title="One by one" note={note}>
      <DataTable
        caption={done ? 'What was done with each' : 'What would be done with each'}
        hideCaption
        columns={columns}
        rows={lines.map((line) => ({ ...line, done }))}
        rowKey={(line) => line.id}
      />
    </Section>
  );
}
