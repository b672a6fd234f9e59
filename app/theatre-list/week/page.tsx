import type { Metadata } from 'next';
import { Suspense } from 'react';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Skeleton } from '@/app/_ui/skeleton';
import { bookingChoices, listCases } from '@/db/queries/cases';
import { sessionsOn } from '@/db/queries/theatre/theatreSessions';
import { may } from '@/lib/people/permissions';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { GiveSets } from '../give-sets';
import { GoToDay } from '../go-to-day';
import { Week } from './week';

export const metadata: Metadata = { title: 'Theatre list, a week' };
export const dynamic = 'force-dynamic';

const DAYS = 7;

/** Seven days by theatre: how many cases, and how they stand. */
export default async function TheatreWeekPage({
  searchParams,
}: {
  searchParams: Promise<{ from?: string }>;
}) {
  const { db, person } = await enter('/theatre-list/week');
  const at = now();
  const today = wallClock(at).date;
  const asked = plainDate.safeParse((await searchParams).from);
  const from = asked.success ? asked.data : today;
  const before = addDays(from, DAYS);
  const [cases, sessions, { theatres: rooms }] = await Promise.all([
    listCases(db, from, before),
    sessionsOn(db, from, before),
    bookingChoices(db),
  ]);
  const theatres = rooms.map(({ id, name }) => ({ value: id, label: name }));
  const week = (date: typeof from) => `/theatre-list/week?from=${date}`;
  return (
    <Page
      title="Theatre list, a week"
      lead={`Seven days from ${dayWords(from)}: ${cases.length} ${cases.length === 1 ? 'case' : 'cases'}.`}
      breadcrumb={[
        { label: 'Cases', href: '/cases' },
        { label: 'Theatre list', href: '/theatre-list' },
      ]}
      actions={
        <>
          <LinkButton href={week(addDays(from, -DAYS))}>Week before</LinkButton>
          {from === today ? null : <LinkButton href={week(today)}>From today</LinkButton>}
          <LinkButton href={week(before)}>Week after</LinkButton>
          <GoToDay date={from} leadsTo="week" />
        </>
      }
    >
      {may(person, 'keepTheatreList') ? <GiveSets theatres={theatres} at={at} /> : null}
      <Suspense key={from} fallback={<Skeleton lines={20} label="Working out how the cases stand" />}>
        <Week {...{ db, from, today, cases, sessions, theatres }} days={DAYS} />
      </Suspense>
    </Page>
  );
}
