import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { requestChoices } from '@/db/queries/loans/choices';
import { momentWords } from '@/lib/wording/sets';
import { RequestForm } from './request-form';

export const metadata: Metadata = { title: 'Ask for a loan' };
export const dynamic = 'force-dynamic';

type Props = { searchParams: Promise<{ case?: string; lender?: string; configuration?: string }> };

/** Asks a lender for a loan set, for a case or a period. */
export default async function NewLoanPage({ searchParams }: Props) {
  const { db } = await enter('/loans/new');
  const at = now();
  const [choices, asked] = await Promise.all([requestChoices(db, at), searchParams]);
  const among = (all: readonly { id: string }[], id: string | undefined) =>
    all.some((one) => one.id === id) ? (id ?? '') : '';
  return (
    <Page
      measure="reading"
      title="Ask for a loan"
      lead="What is asked of the lender, and by when it is needed. The letter is printed from it; nothing about a patient belongs in it."
      breadcrumb={[{ label: 'Loans', href: '/loans' }]}
    >
      {choices.lenders.length === 0 ? (
        <EmptyState title="No lender is on file">
          <Link href="/lenders">Enter the lender’s firm</Link> first.
        </EmptyState>
      ) : (
        <RequestForm
          lenders={choices.lenders.map(({ id, name }) => ({ value: id, label: name }))}
          cases={choices.cases.map(({ id, reference, startsAt, surgeon }) => ({
            value: id,
            label: `${reference}, ${momentWords(startsAt, at)}`,
            note: surgeon,
          }))}
          configurations={choices.configurations.map(({ id, code, name }) => ({
            value: id,
            label: `${code}, ${name}`,
          }))}
          asked={{
            caseId: among(choices.cases, asked.case),
            lenderId: among(choices.lenders, asked.lender),
            configurationId: among(choices.configurations, asked.configuration),
          }}
        />
      )}
    </Page>
  );
}
