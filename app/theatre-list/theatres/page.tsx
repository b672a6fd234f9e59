import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { bookingChoices } from '@/db/queries/cases';
import { readSetting } from '@/db/queries/settings';
import { sessionsOn, theatreLeads } from '@/db/queries/theatre/theatreSessions';
import { may } from '@/lib/people/permissions';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { momentWords } from '@/lib/wording/sets';
import { spanWords } from '@/lib/wording/theatre-list';
import { GoToDay } from '../go-to-day';
import { LeadTable } from './lead-table';
import { SessionDialog } from './session-dialog';
import { SessionTable } from './session-table';

export const metadata: Metadata = { title: 'Theatres and sessions' };
export const dynamic = 'force-dynamic';

const DAYS = 7;

/** How long before a case its sets must stand in each theatre, and when the theatres work. */
export default async function TheatresPage({ searchParams }: { searchParams: Promise<{ from?: string }> }) {
  const { db, person } = await enter('/theatre-list/theatres');
  const at = now();
  const today = wallClock(at).date;
  const asked = plainDate.safeParse((await searchParams).from);
  const from = asked.success ? asked.data : today;
  const before = addDays(from, DAYS);
  const [leads, sessions, { surgeons }, { leadMinutes: hospitalLead }] = await Promise.all([
    theatreLeads(db),
    sessionsOn(db, from, before),
    bookingChoices(db),
    readSetting(db.read, 'stages'),
  ]);
  const mayChange = may(person, 'keepTheatreSessions');
  const choices = {
    theatres: leads.map(({ id, name }) => ({ value: id, label: name })),
    surgeons: surgeons.map(({ id, name }) => ({ value: id, label: name })),
  };
  const nameOf = new Map<string, string>(leads.map(({ id, name }) => [id, name]));
  const on = (date: typeof from) => `/theatre-list/theatres?from=${date}`;
  return (
    <Page
      title="Theatres and sessions"
      lead="How long before a case its sets must stand in theatre, and when each theatre works."
      breadcrumb={[
        { label: 'Cases', href: '/cases' },
        { label: 'Theatre list', href: '/theatre-list' },
      ]}
    >
      <Section
        title="Sets stand in theatre before the case"
        note={`${hospitalLead} min unless a theatre says otherwise`}
      >
        <LeadTable
          mayChange={mayChange}
          hospitalLead={hospitalLead}
          rows={leads.map(({ changed, ...lead }) => ({
            ...lead,
            why:
              changed === null ? null : `${changed.because} (${changed.by}, ${momentWords(changed.at, at)})`,
          }))}
        />
      </Section>
      <Section
        title="Sessions"
        note={`${dayWords(from)} to ${dayWords(addDays(before, -1))}`}
        actions={
          <>
            <LinkButton href={on(addDays(from, -DAYS))}>Week before</LinkButton>
            {from === today ? null : <LinkButton href={on(today)}>From today</LinkButton>}
            <LinkButton href={on(before)}>Week after</LinkButton>
            <GoToDay date={from} leadsTo="theatres" />
            {mayChange ? <SessionDialog choices={choices} from={from} /> : null}
          </>
        }
      >
        {sessions.length === 0 ? (
          <EmptyState title="No session in these seven days">
            Without one, every case of theirs is out of hours.
          </EmptyState>
        ) : (
          <SessionTable
            choices={choices}
            mayChange={mayChange}
            rows={sessions.map((session) => ({
              id: session.id,
              theatreId: session.theatreId,
              theatre: nameOf.get(session.theatreId) ?? session.theatreId,
              date: session.date,
              day: dayWords(session.date),
              from: wallClock(session.startsAt).time,
              until: wallClock(session.endsAt).time,
              startsAt: session.startsAt,
              times: spanWords(session),
              surgeonId: session.surgeon?.id ?? null,
              surgeon: session.surgeon?.name ?? 'anybody’s',
              revision: session.revision,
              over: session.endsAt <= at,
            }))}
          />
        )}
      </Section>
    </Page>
  );
}
