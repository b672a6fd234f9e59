import Link from 'next/link';
import { Disclosure } from '@/app/_ui/disclosure';
import { Status } from '@/app/_ui/status';
import type { Effect } from '@/lib/fit/change';
import type { Outcome } from '@/lib/fit/question';
import { countSentence, effectSentence, outcomeLabel } from '@/lib/wording/fit-effect';
import { designWords } from '@/lib/wording/fit-things';
import styles from '../fit.module.css';
import { pairHref } from './pair-href';

export const OUTCOME_TONE = {
  fits: 'good',
  doesNotFit: 'stop',
  notEstablished: 'unknown',
} as const satisfies Record<Outcome, string>;

const MOST_SHOWN = 60;

/** What a change would do to the whole catalogue: counts, then each group of pairs whose answer changes. */
export function EffectView({ effect }: { effect: Effect }) {
  const shown = effect.changed.slice(0, MOST_SHOWN);
  return (
    <div className={styles.stack}>
      <p>{effectSentence(effect)}</p>
      {effect.counts.length > 0 ? (
        <ul className={styles.rows}>
          {effect.counts.map((count) => (
            <li key={`${count.before} ${count.after}`}>{countSentence(count)}</li>
          ))}
        </ul>
      ) : null}
      {shown.length > 0 ? (
        <Disclosure
          summary={`Which pairs (${effect.changed.length} ${effect.changed.length === 1 ? 'group' : 'groups'} alike)`}
        >
          <ul className={styles.rows}>
            {shown.map(({ row, column, before, after, pairs }) => (
              <li key={`${row.key} ${column.key}`}>
                <span className={styles.grow}>
                  <Link href={pairHref(effect.relation, row.things[0], column.things[0])}>
                    {designWords(effect.relation, row).label} · {designWords(effect.relation, column).label}
                  </Link>{' '}
                  <span className={styles.small}>
                    {pairs} {pairs === 1 ? 'pair' : 'pairs'}
                  </span>
                </span>
                <Status tone={OUTCOME_TONE[before.outcome]} look="plain">
                  {outcomeLabel(before.outcome)}
                </Status>
                <span aria-hidden="true">→</span>
                <Status tone={OUTCOME_TONE[after.outcome]}>{outcomeLabel(after.outcome)}</Status>
              </li>
            ))}
          </ul>
          {effect.changed.length > shown.length ? (
            <p className={styles.small}>
              {effect.changed.length - shown.length} more groups are not listed here.
            </p>
          ) : null}
        </Disclosure>
      ) : null}
    </div>
  );
}
