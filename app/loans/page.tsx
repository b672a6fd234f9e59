import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { type LoanOnBoard, loanBoard } from '@/db/queries/loans/loanBoard';
import { isKeepers, type LoanPart, partOf } from '@/lib/loans/board';
import { may } from '@/lib/people/permissions';
import { lateWords } from '@/lib/wording/loans';
import { momentWords } from '@/lib/wording/sets';
import { EarlierLoans } from './earlier-loans';
import { LoanCard } from './loan-card';
import styles from './loans.module.css';

export const metadata: Metadata = { title: 'Loans' };
export const dynamic = 'force-dynamic';

/** Parts of the board in their order, with what stands where one is empty. */
const PARTS: { part: Exclude<LoanPart, 'over'>; title: string; note: string; empty: string }[] = [
  {
    part: 'late',
    title: 'Late',
    note: 'not here though due, or to be decided on',
    empty: 'Nothing is late.',
  },
  { part: 'here', title: 'Here', note: 'being unpacked, or in use', empty: 'No loan is in the house.' },
  { part: 'toGoBack', title: 'To go back', note: 'or claimed for', empty: 'Nothing has to go back.' },
  { part: 'due', title: 'To come', note: 'asked for, or confirmed', empty: 'Nothing is asked for.' },
];

/** Every loan by what is to be done about it, the keeper’s own next steps first. */
export default async function LoansPage() {
  const { db, person } = await enter('/loans');
  const at = now();
  const loans = await loanBoard(db, at);
  const inPart = (part: LoanPart) => loans.filter((loan) => partOf(loan) === part).sort(keepersFirst);
  return (
    <Page
      bench
      title="Loans"
      lead="Sets of other firms, from asking for them until they are back: what is late, here, to go back, and to come."
      actions={
        <>
          <LinkButton href="/lenders">Lenders and how punctual they are</LinkButton>
          {may(person, 'askForLoan') ? (
            <LinkButton href="/loans/new" kind="primary">
              Ask for a loan
            </LinkButton>
          ) : null}
        </>
      }
    >
      {PARTS.map(({ part, title, note, empty }) => {
        const lines = inPart(part);
        return (
          <Section key={part} title={title} note={lines.length === 0 ? note : `${lines.length}, ${note}`}>
            {lines.length === 0 ? (
              <p className={styles.soft}>{empty}</p>
            ) : (
              <ul className={styles.cards} aria-label={title}>
                {lines.map((loan) => (
                  <LoanCard key={loan.id} loan={loan} at={at} />
                ))}
              </ul>
            )}
          </Section>
        );
      })}
      <Section title="Over" note="of the last month">
        <EarlierLoans
          rows={inPart('over').map((loan) => ({
            id: loan.id,
            number: loan.number,
            state: loan.state,
            lender: loan.lender,
            askedFor: loan.askedFor,
            came: loan.arrivedAt === null ? null : momentWords(loan.arrivedAt, at),
            punctual: punctualWords(loan),
          }))}
        />
      </Section>
    </Page>
  );
}

/** Stable: inside both halves the soonest due stays first. */
const keepersFirst = (a: LoanOnBoard, b: LoanOnBoard) =>
  Number(isKeepers(b.next)) - Number(isKeepers(a.next));

function punctualWords({ arrivedAt, dueAt, late, lateMinutes }: LoanOnBoard): string | null {
  if (arrivedAt === null || dueAt === null) return null;
  return late ? `${lateWords(lateMinutes ?? 0)} late` : 'in time';
}
