import Link from 'next/link';
import { LinkButton } from '@/app/_ui/link-button';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { LoanOnBoard } from '@/db/queries/loans/loanBoard';
import { LOAN_STATE_TONES, LOAN_STATE_WORDS, nextWords } from '@/lib/wording/loans';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import styles from './case.module.css';

/** Loans asked for this case, each with what is to be done next; and the way to ask for one. */
export function CaseLoans({
  loans,
  askHref,
  at,
}: {
  loans: readonly LoanOnBoard[];
  /** `null` where the reader may not ask, or the case has begun. */
  askHref: string | null;
  at: string;
}) {
  if (loans.length === 0 && askHref === null) return null;
  return (
    <Section
      title="Loans"
      note={loans.length === 0 ? 'none for this case' : String(loans.length)}
      actions={askHref === null ? null : <LinkButton href={askHref}>Ask for a loan</LinkButton>}
    >
      {loans.length === 0 ? null : (
        <ul className={styles.loans} aria-label="Loans for this case">
          {loans.map((loan) => (
            <li key={loan.id}>
              <Link href={`/loans/${loan.id}`}>{loan.number}</Link>
              <Status tone={LOAN_STATE_TONES[loan.state]}>{capitalised(LOAN_STATE_WORDS[loan.state])}</Status>
              <span>{loan.askedFor}</span>
              <span>{nextWords(loan.next)}</span>
              {loan.arrivedAt === null && loan.dueAt !== null ? (
                <Status tone={loan.overdue ? 'stop' : 'neutral'} look="plain">
                  {`${loan.overdue ? 'not here; it was due' : 'due'} ${momentWords(loan.dueAt, at)}`}
                </Status>
              ) : null}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
