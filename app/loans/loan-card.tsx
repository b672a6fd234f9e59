import Link from 'next/link';
import { Status } from '@/app/_ui/status';
import type { LoanOnBoard } from '@/db/queries/loans/loanBoard';
import { LOAN_STATE_TONES, LOAN_STATE_WORDS, lateWords, nextWords } from '@/lib/wording/loans';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import styles from './loans.module.css';

/** One loan on the board, with its next step. */
export function LoanCard({ loan, at }: { loan: LoanOnBoard; at: string }) {
  return (
    <li className={styles.card}>
      <p className={styles.cardHead}>
        <Link href={`/loans/${loan.id}`} className={styles.cardLink}>
          {loan.number}
        </Link>
        <Status tone={LOAN_STATE_TONES[loan.state]}>{capitalised(LOAN_STATE_WORDS[loan.state])}</Status>
      </p>
      <p className={styles.next}>{nextWords(loan.next)}</p>
      <p>{loan.askedFor}</p>
      <p className={styles.soft}>
        {[loan.lender, loan.caseReference === null ? null : `for case ${loan.caseReference}`]
          .filter(Boolean)
          .join(', ')}
      </p>
      <Timing loan={loan} at={at} />
      {loan.backBy === null || loan.arrivedAt === null ? null : (
        <p>{`Back with the lender by ${loan.backBy}`}</p>
      )}
      {loan.held.length > 0 ? (
        <p>
          <Status tone="stop" look="plain">{`held: ${loan.held.join(', ')}`}</Status>
        </p>
      ) : null}
    </li>
  );
}

function Timing({ loan, at }: { loan: LoanOnBoard; at: string }) {
  const { dueAt, arrivedAt, overdue, late, lateMinutes, neededAt } = loan;
  if (arrivedAt !== null)
    return (
      <p>
        {`Came ${momentWords(arrivedAt, at)}. `}
        {dueAt === null ? (
          <Status tone="unknown" look="plain">
            when it was due is not established
          </Status>
        ) : late ? (
          <Status tone="attention" look="plain">{`${lateWords(lateMinutes ?? 0)} late`}</Status>
        ) : (
          <Status tone="good" look="plain">
            in time
          </Status>
        )}
      </p>
    );
  return (
    <p>
      {dueAt === null ? (
        <Status tone="unknown" look="plain">
          when it is due is not established
        </Status>
      ) : overdue ? (
        <Status tone="stop" look="plain">{`not here; it was due ${momentWords(dueAt, at)}`}</Status>
      ) : (
        `Due ${momentWords(dueAt, at)}`
      )}
      {neededAt === null ? '' : `, needed ${momentWords(neededAt, at)}`}
    </p>
  );
}
