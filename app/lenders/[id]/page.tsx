import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { EmptyState } from '@/app/_ui/empty-state';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { type LenderOnFile, lendersOnFile } from '@/db/queries/loans/lenders';
import { loanState } from '@/lib/loans/states';
import { may } from '@/lib/people/permissions';
import { LOAN_STATE_TONES, LOAN_STATE_WORDS, lateWords, shareWords } from '@/lib/wording/loans';
import { capitalised } from '@/lib/wording/numbers';
import styles from '../../loans/loans.module.css';
import { LenderForm } from '../lender-form';

export const metadata: Metadata = { title: 'Lender' };
export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

/** One lender: how to reach it, its figures, and its loans. */
export default async function LenderPage({ params }: Props) {
  const { db, person } = await enter('/lenders/[id]');
  const { id } = await params;
  const lender = (await lendersOnFile(db, now())).find((one) => one.id === id);
  if (!lender) notFound();
  const newestFirst = [...lender.loans].reverse();
  return (
    <Page
      title={lender.name}
      mark={lender.inUse ? undefined : <Status tone="neutral">out of use</Status>}
      lead="How to reach this lender, how punctual it has been, and what it lent us."
      breadcrumb={[{ label: 'Lenders', href: '/lenders' }]}
    >
      {may(person, 'keepLenders') ? null : (
        <DefinitionList
          columns={2}
          items={[
            { term: 'Contact person', value: lender.contact },
            { term: 'Telephone', value: lender.phone },
            { term: 'E-mail', value: lender.email },
            { term: 'Address', value: lender.address },
            { term: 'Worth knowing', value: lender.note },
          ]}
        />
      )}
      <Figures lender={lender} />
      <Section title="Loans" note={String(lender.loans.length)}>
        {newestFirst.length === 0 ? (
          <EmptyState title="Nothing was asked of it yet">
            A loan is asked for from the page of loans.
          </EmptyState>
        ) : (
          <ul className={styles.plain} aria-label={`Loans of ${lender.name}`}>
            {newestFirst.map((loan) => {
              const state = loanState.parse(loan.state);
              return (
                <li key={loan.id}>
                  <Link href={`/loans/${loan.id}`}>{loan.number}</Link>
                  <Status tone={LOAN_STATE_TONES[state]} look="plain">
                    {capitalised(LOAN_STATE_WORDS[state])}
                  </Status>
                  <span>{loan.askedFor}</span>
                </li>
              );
            })}
          </ul>
        )}
      </Section>
      {may(person, 'keepLenders') ? (
        <Section title="How to reach it">
          <LenderForm key={lender.revision} lender={lender} />
        </Section>
      ) : null}
    </Page>
  );
}

function Figures({ lender }: { lender: LenderOnFile }) {
  const { punctuality, unused } = lender.figures;
  const { n, onTime, medianLateMinutes, worstLateMinutes, overdue, notEstablished } = punctuality;
  const late = (minutes: number | null) =>
    minutes === null ? null : minutes === 0 ? 'not late' : lateWords(minutes);
  return (
    <Section title="How it has been" note="each figure with the number it is of">
      <FigureRow>
        <Figure
          label="Came in time"
          value={n === 0 ? null : shareWords(onTime, n)}
          note={
            notEstablished === 0
              ? 'of all that came'
              : `${notEstablished} more: when they were due is not established`
          }
          size="medium"
        />
        <Figure
          label="Half of them by"
          value={late(medianLateMinutes)}
          note={`median lateness, n = ${n}`}
          size="medium"
        />
        <Figure
          label="Latest"
          value={late(worstLateMinutes)}
          note={`worst lateness, n = ${n}`}
          size="medium"
        />
        <Figure label="Due and not here" value={overdue} note="in no figure beside" size="medium" />
        <Figure
          label="Processed, not used"
          value={unused.n === 0 ? null : shareWords(unused.unused, unused.n)}
          note="gone back, washed here, never in theatre"
          size="medium"
        />
      </FigureRow>
    </Section>
  );
}
