import type { ReactNode } from 'react';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import styles from './exchange.module.css';
import type { ExchangeView } from './exchange-view';

/** What bringing in would do in all, or has done, and how the file was understood. */
export function Verdict({ view, children }: { view: ExchangeView; children: ReactNode }) {
  const { tone, word, sentence } = verdictOf(view);
  return (
    <Section title={view.done === null ? 'What would happen' : 'What was done'}>
      <div className={styles.part}>
        <div className={styles.verdict} role="status">
          <Status tone={tone} look="strong">
            {word}
          </Status>
          <span>{sentence}</span>
        </div>
        {children}
        <ul className={styles.soft}>
          <li>{view.understood}</li>
          {view.counts.leftOut > 0 ? (
            <li>{`${view.counts.leftOut === 1 ? 'One row is' : `${view.counts.leftOut} rows are`} left out by ${view.counts.leftOut === 1 ? 'its' : 'their'} own word.`}</li>
          ) : null}
          {view.before === null ? null : <li>{`This very file came in before, ${view.before}.`}</li>}
          {view.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      </div>
    </Section>
  );
}

/** Nothing is in the way, and there is something to do. */
export const canBringIn = ({ done, problems, questions, undecided, counts }: ExchangeView): boolean =>
  done === null &&
  problems.length + questions.length + undecided.length === 0 &&
  counts.new + counts.changed > 0;

function verdictOf(view: ExchangeView): { tone: Tone; word: string; sentence: string } {
  const { done, problems, moreProblems, questions, undecided, counts } = view;
  if (done !== null)
    return {
      tone: 'good',
      word: 'Brought in',
      sentence: `${done.added} added, ${done.changed} changed. It can be taken back below, under what came in.`,
    };
  const count = problems.length + moreProblems;
  if (count > 0)
    return {
      tone: 'stop',
      word: count === 1 ? 'One problem' : `${count} problems`,
      sentence: 'Nothing is brought in in part: put them right in the file, or by the choices below.',
    };
  if (questions.length + undecided.length > 0)
    return {
      tone: 'unknown',
      word: 'Not settled',
      sentence: 'Something is left open below that only a person can say.',
    };
  if (counts.new + counts.changed === 0)
    return {
      tone: 'neutral',
      word: 'Nothing to do',
      sentence: counts.unchanged === 0 ? 'Every row is left out.' : 'All of it stands here already.',
    };
  return {
    tone: 'attention',
    word: 'Tried, not brought in yet',
    sentence: `${counts.new} new, ${counts.changed} changed, ${counts.unchanged} as they are.`,
  };
}
