'use client';

import { lostStep, type UseOutcome, useOutcome } from '@/lib/usage/act';
import { LOST_STEP_WORDS, USE_OUTCOME_WORDS } from '@/lib/wording/usage';
import styles from './use.module.css';
import type { Saying } from './use-table';

/** What the next touch or scan says of its piece; in view while the rest is scrolled. */
export function OutcomeBar({ saying, onSay }: { saying: Saying; onSay: (next: Saying) => void }) {
  const choose = (outcome: UseOutcome) =>
    onSay({ ...saying, outcome, lostAt: outcome === 'notFound' ? (saying.lostAt ?? 'during') : null });
  return (
    <div className={styles.bar}>
      <fieldset className={styles.outcomes}>
        <legend className={styles.legend}>The next piece is</legend>
        {useOutcome.options.map((outcome) => (
          <button
            key={outcome}
            type="button"
            className={styles.key}
            aria-pressed={saying.outcome === outcome}
            onClick={() => choose(outcome)}
          >
            {USE_OUTCOME_WORDS[outcome]}
          </button>
        ))}
      </fieldset>
      {saying.outcome === 'notFound' ? (
        <fieldset className={styles.outcomes}>
          <legend className={styles.legend}>Not found</legend>
          {lostStep.options.map((step) => (
            <button
              key={step}
              type="button"
              className={styles.key}
              aria-pressed={saying.lostAt === step}
              onClick={() => onSay({ ...saying, lostAt: step })}
            >
              {LOST_STEP_WORDS[step]}
            </button>
          ))}
        </fieldset>
      ) : null}
    </div>
  );
}
