import type { Metadata } from 'next';
import { Suspense } from 'react';
import { changedDay } from '@/app/_server/changed-day';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { pageFirst } from '@/app/_server/page-first';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Skeleton } from '@/app/_ui/skeleton';
import { ChangedSince } from '@/app/reports/changed-since';
import { theatreDay } from '@/db/queries/theatre/theatreDay';
import { may } from '@/lib/people/permissions';
import { addDays, type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { dayCountWords } from '@/lib/wording/theatre-list';
import { dayLines } from './day-lines';
import { DayTable } from './day-table';
import { DayTimeLine } from './day-time-line';
import { GiveSets } from './give-sets';
import { GoToDay } from './go-to-day';

export const metadata: Metadata = { title: 'Theatre list' };
export const dynamic = 'force-dynamic';

export default async function TheatreListPage({
  searchParams,
}: {
  searchParams: Promise<{ date?: string }>;
}) {
  const { db, person } = await enter('/theatre-list');
  const at = now();
  const today = wallClock(at).date;
  const asked = plainDate.safeParse((await searchParams).date);
  const date = asked.success ? asked.data : today;
  const day = await theatreDay(db, date);
  const { rooms, setRows, lines } = dayLines(day, date, at);
  const theatres = day.theatres.map(({ id, name }) => ({ value: id, label: name }));
  const mayKeep = may(person, 'keepTheatreList');
  const on = (other: typeof date) => `/theatre-list?date=${other}`;
  return (
    <Page
      title={dayWords(date)}
      mark={date === today ? 'today' : undefined}
      lead={dayCountWords(day.cases)}
      breadcrumb={[{ label: 'Cases', href: '/cases' }]}
      actions={
        <>
          <LinkButton href={on(addDays(date, -1))}>Day before</LinkButton>
          {date === today ? null : <LinkButton href={on(today)}>Today</LinkButton>}
          <LinkButton href={on(addDays(date, 1))}>Day after</LinkButton>
          <LinkButton href={`/theatre-list/week?from=${date}`}>Week</LinkButton>
          <LinkButton href={`/theatre-list/theatres?from=${date}`}>Theatres and sessions</LinkButton>
          {mayKeep ? <LinkButton href="/cases/import">Import a list</LinkButton> : null}
          <GoToDay date={date} />
          <LinkButton href={`/reports/morning?day=${date}`}>Morning report</LinkButton>
          <LinkButton href="/theatre-list/at-risk">Cases at risk</LinkButton>
          <LinkButton href={`/cases/new?date=${date}`} kind="primary">
            Book a case
          </LinkButton>
        </>
      }
    >
      {day.cases.length === 0 ? (
        <EmptyState title="No case on this day">Nothing is booked in any theatre.</EmptyState>
      ) : (
        <>
          <DayTimeLine label={`Theatres on ${dayWords(date)}`} {...rooms} />
          {mayKeep ? <GiveSets theatres={theatres} at={at} /> : null}
          <DayTable
            day={date}
            lines={lines}
            theatres={theatres}
            mayKeep={mayKeep}
            mayPromise={may(person, 'promiseSets')}
          />
          <Section
            title="Which set is spoken for when"
            note={setRows.rows.length === 0 ? 'none' : `${setRows.rows.length} sets`}
          >
            {setRows.rows.length === 0 ? (
              <EmptyState title="No set is promised to a case of this day">
                A promise keeps a set for one case from its lead until it can be back in the sterile store.
              </EmptyState>
            ) : (
              <DayTimeLine label={`Promised sets on ${dayWords(date)}`} {...setRows} />
            )}
          </Section>
        </>
      )}
      <Suspense fallback={<Skeleton lines={4} label="Looking for what changed" />}>
        <Changed date={date} at={at} />
      </Suspense>
    </Page>
  );
}

/** Below the list, which does not wait for it: how each case stands is worked out for it. */
async function Changed({ date, at }: { date: PlainDate; at: string }) {
  await pageFirst();
  const access = await enter('/theatre-list');
  return <ChangedSince changed={await changedDay(access, 'theatreList', date)} now={at} />;
}
