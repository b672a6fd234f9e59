import Link from 'next/link';
import { Disclosure } from '@/app/_ui/disclosure';
import { Status } from '@/app/_ui/status';
import type { PairsEffect } from '@/lib/changes/trial';
import type { Outcome } from '@/lib/fit/question';
import { countSentence, effectSentence, outcomeLabel } from '@/lib/wording/fit-effect';
import styles from './changes.module.css';

export const OUTCOME_TONE = {
  fits: 'good',
  doesNotFit: 'stop',
  notEstablished: 'unknown',
} as const satisfies Record<Outcome, string>;

/** Pairs of the catalogue whose answer would change: counted, then each group of pairs no rule can tell apart. */
export function PairsView({ pairs }: { pairs: PairsEffect }) {
  const changed = pairs.counts.reduce((sum, one) => sum + one.pairs, 0);
  const groups = pairs.groups.length + pairs.more;
  return (
    <>
      <p>{effectSentence({ asked: pairs.asked, changed, otherwiseSaid: pairs.otherwiseSaid })}</p>
      {pairs.counts.length > 0 ? (
        <ul className={styles.rows}>
          {pairs.counts.map((count) => (
            <li key={`${count.before} ${count.after}`}>{countSentence(count)}</li>
          ))}
        </ul>
      ) : null}
      {groups > 0 ? (
        <Disclosure summary={`Which pairs (${groups} ${groups === 1 ? 'group' : 'groups'} alike)`}>
          <ul className={styles.rows}>
            {pairs.groups.map(({ row, column, href, before, after, pairs: count }) => (
              <li key={`${href} ${row} ${column}`}>
                <span className={styles.grow}>
                  <Link href={href}>
                    {row} · {column}
                  </Link>{' '}
                  <span className={styles.small}>
                    {count} {count === 1 ? 'pair' : 'pairs'}
                  </span>
                </span>
                <span className={styles.turn}>
                  <Status tone={OUTCOME_TONE[before]} look="plain">
                    {outcomeLabel(before)}
                  </Status>
                  <span aria-hidden="true">→</span>
                  <Status tone={OUTCOME_TONE[after]}>{outcomeLabel(after)}</Status>
                </span>
              </li>
            ))}
          </ul>
          {pairs.more > 0 ? (
            <p className={styles.small}>{pairs.more.toLocaleString('en-GB')} more groups are not listed.</p>
          ) : null}
        </Disclosure>
      ) : null}
    </>
  );
}
