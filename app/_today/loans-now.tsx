import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { type LoanOnBoard, loanBoard } from '@/db/queries/loans/loanBoard';
import { isForNow } from '@/lib/loans/board';
import { may } from '@/lib/people/permissions';
import { addDays } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { LOAN_STATE_TONES, LOAN_STATE_WORDS, nextWords } from '@/lib/wording/loans';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import styles from './case-standing-list.module.css';

const MOST = 6;

/** Loans that are late, or have something to be done about them today or tomorrow, for whoever has a hand in loans. */
export async function LoansNow() {
  const at = now();
  const { db, person } = await enter('/');
  if (!may(person, 'keepLoans') && !may(person, 'countLoan')) return null;
  const tomorrow = addDays(wallClock(at).date, 1);
  const loans = (await loanBoard(db, at)).filter((loan) => isForNow(loan, tomorrow));
  if (loans.length === 0) return null;
  return (
    <Section
      title="Loans"
      note={loans.length > MOST ? `${MOST} of ${loans.length}` : `${loans.length}`}
      actions={<Link href="/loans">All loans</Link>}
    >
      <ol className={styles.list} aria-label="Loans to see to">
        {loans.slice(0, MOST).map((loan) => (
          <li key={loan.id} className={styles.row}>
            <p className={styles.when}>
              <span className={styles.time}>{whenWords(loan, at)}</span>
            </p>
            <div className={styles.what}>
              <p className={styles.reference}>
                <Link href={`/loans/${loan.id}`}>{loan.number}</Link>
              </p>
              <p className={styles.detail}>
                {loan.caseReference === null ? loan.lender : `${loan.lender}, for case ${loan.caseReference}`}
              </p>
            </div>
            <div className={styles.standing}>
              {loan.overdue ? (
                <Status tone="stop">Not here</Status>
              ) : (
                <Status tone={LOAN_STATE_TONES[loan.state]}>
                  {capitalised(LOAN_STATE_WORDS[loan.state])}
                </Status>
              )}
              <p className={styles.sentence}>{nextWords(loan.next)}</p>
            </div>
          </li>
        ))}
      </ol>
    </Section>
  );
}

function whenWords({ arrivedAt, dueAt }: LoanOnBoard, at: string): string {
  if (arrivedAt !== null) return `came ${momentWords(arrivedAt, at)}`;
  return dueAt === null ? 'due: not established' : `due ${momentWords(dueAt, at)}`;
}
