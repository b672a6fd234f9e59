import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { loanChoices } from '@/db/queries/loans/choices';
import { findLoan } from '@/db/queries/loans/findLoan';
import { wrongWords } from '@/lib/documents/loanReturn';
import { loanReturnWords } from '@/lib/wording/loan-paper';
import { LOAN_STATE_TONES, LOAN_STATE_WORDS, nextWords } from '@/lib/wording/loans';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import styles from '../loans.module.css';
import { Claims } from './claims';
import { LineTable } from './line-table';
import { LoanFactsList } from './loan-facts-list';
import { NextStep } from './next-step';
import { OtherActs } from './other-acts';
import { Questions } from './questions';
import { Trays } from './trays';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/loans/[id]');
  const found = await findLoan(db, (await params).id, now());
  return { title: found ? `Loan ${found.loan.number}` : 'No such loan' };
}

/** One loan: what is to be done next, and all that is on record of it. */
export default async function LoanPage({ params }: Props) {
  const { db, person } = await enter('/loans/[id]');
  const at = now();
  const found = await findLoan(db, (await params).id, at);
  if (!found) notFound();
  const choices = await loanChoices(db, found.booked?.surgeonId ?? null, at);
  const { loan, lender, next, lines } = found;
  return (
    <Page
      bench
      title={`Loan ${loan.number}`}
      mark={<Status tone={LOAN_STATE_TONES[loan.state]}>{capitalised(LOAN_STATE_WORDS[loan.state])}</Status>}
      lead={`${loan.askedFor}. From ${lender.name}.`}
      breadcrumb={[{ label: 'Loans', href: '/loans' }]}
      actions={
        <>
          <LinkButton href={`/loans/${loan.id}/request-letter`} newTab>
            Request letter
          </LinkButton>
          {loan.state === 'goingBack' || loan.state === 'goneBack' ? (
            <LinkButton href={`/loans/${loan.id}/return-note`} newTab>
              Return note
            </LinkButton>
          ) : null}
        </>
      }
    >
      <Section title={nextWords(next)} note="next step" look="sheet" id="question">
        <NextStep found={found} person={person} choices={choices} at={at} />
      </Section>
      <LoanFactsList found={found} at={at} />
      <OtherActs found={found} person={person} choices={choices} at={at} />
      {found.trays.length > 0 ? <Trays found={found} /> : null}
      <Claims found={found} person={person} at={at} />
      <Questions found={found} at={at} />
      <Section title="Content" note={contentNote(lines)}>
        <LineTable
          rows={lines.map((line, index) => ({
            id: line.id,
            position: index + 1,
            tray: line.tray,
            code: line.code ?? line.gtin,
            name: line.name,
            known: line.itemId !== null,
            implant: line.implant,
            listed: line.quantity,
            came: line.cameIn && loanReturnWords.pieces(line.cameIn.sound, line.cameIn.damaged),
            used: line.used,
            goes: line.goesOut && loanReturnWords.pieces(line.goesOut.sound, line.goesOut.damaged),
            wrong: wrongWords(line).join('; '),
          }))}
        />
      </Section>
      <Section title="What happened">
        <ol className={styles.story}>
          {found.story.map((step) => (
            <li key={`${step.state} ${step.at}`}>
              <span className={styles.soft}>{momentWords(step.at, at)}</span>
              <span>
                <strong>{capitalised(LOAN_STATE_WORDS[step.state])}</strong>
                {`, entered by ${step.by}.`}
                {step.note === null ? '' : ` ${step.note}`}
              </span>
            </li>
          ))}
        </ol>
      </Section>
    </Page>
  );
}

function contentNote(lines: readonly { itemId: string | null; quantity: number }[]): string {
  const unknown = lines.filter(({ itemId }) => itemId === null).length;
  const pieces = lines.reduce((sum, { quantity }) => sum + quantity, 0);
  return `${lines.length} lines, ${pieces} pieces${unknown === 0 ? '' : `, ${unknown} not in the catalogue`}`;
}
