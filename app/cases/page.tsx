import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { listCases } from '@/db/queries/cases';
import { may } from '@/lib/people/permissions';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { caseLines } from './case-lines';
import { CaseList } from './case-list';

export const metadata: Metadata = { title: 'Cases' };
export const dynamic = 'force-dynamic';

const DAYS = 7;

export default async function CasesPage({ searchParams }: { searchParams: Promise<{ from?: string }> }) {
  const { db, person } = await enter('/cases');
  const today = wallClock(now()).date;
  const asked = plainDate.safeParse((await searchParams).from);
  const from = asked.success ? asked.data : today;
  const cases = await listCases(db, from, addDays(from, DAYS));
  return (
    <Page
      title="Cases"
      lead={`Seven days from ${dayWords(from)}. A case is known by its reference alone.`}
      actions={
        <>
          <LinkButton href={`/cases?from=${addDays(from, -DAYS)}`}>Seven days earlier</LinkButton>
          <LinkButton href={`/cases?from=${addDays(from, DAYS)}`}>Seven days later</LinkButton>
          <LinkButton href={`/theatre-list/week?from=${from}`}>Theatre list</LinkButton>
          {may(person, 'keepTheatreList') ? (
            <LinkButton href="/cases/import">Import a list</LinkButton>
          ) : null}
          <LinkButton href="/cases/new" kind="primary">
            Book a case
          </LinkButton>
        </>
      }
    >
      <CaseList lines={caseLines(cases)} />
      <p>
        <Link href="/plans">Saved starts and preference cards</Link>
      </p>
    </Page>
  );
}
