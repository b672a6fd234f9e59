import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { LoanOnScreen } from '@/db/queries/loans/loanOnScreen';
import { questionWords } from '@/lib/wording/loans';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import styles from '../loans.module.css';

/** What was put to a named person, and what they said. */
export function Questions({ found, at }: { found: LoanOnScreen; at: string }) {
  if (found.questions.length === 0) return null;
  return (
    <Section title="Decisions">
      <ul className={styles.plain} aria-label="Decisions asked for">
        {found.questions.map((one) => (
          <li key={one.id}>
            <strong>{capitalised(questionWords(one.kind))}</strong>
            <span className={styles.soft}>
              {`${one.askedBy} asked ${one.askedOf.name}, ${momentWords(one.askedAt, at)}: ${one.words}`}
            </span>
            {one.answer === null || one.answeredAt === null ? (
              <Status tone="unknown">not answered yet</Status>
            ) : (
              <>
                <Status tone={one.answer === 'yes' ? 'good' : 'stop'}>{one.answer}</Status>
                <span>{`${one.askedOf.name}, ${momentWords(one.answeredAt, at)}: ${one.answerWords}`}</span>
              </>
            )}
          </li>
        ))}
      </ul>
    </Section>
  );
}
