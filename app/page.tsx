import Link from 'next/link';
import { cache, Suspense } from 'react';
import { enter } from '@/app/_server/enter';
import { listCases } from '@/db/queries/cases';
import { addDays } from '@/lib/quantities/plainDate';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { now } from './_server/clock';
import { pageFirst } from './_server/page-first';
import { plannedStandings } from './_server/planned-standings';
import { readinessOf } from './_server/readiness';
import { CaseStandingList } from './_today/case-standing-list';
import { DecisionsWaiting } from './_today/decisions-waiting';
import { KitsToPick } from './_today/kits-to-pick';
import { LoansNow } from './_today/loans-now';
import { NextSteps } from './_today/next-steps';
import { ShortSets } from './_today/short-sets';
import { todayLines } from './_today/today-lines';
import { WaitingForYou } from './_today/waiting-for-you';
import { EmptyState } from './_ui/empty-state';
import { Figure, FigureRow } from './_ui/figure';
import { LinkButton } from './_ui/link-button';
import { Page } from './_ui/page';
import { Section } from './_ui/section';
import { Skeleton } from './_ui/skeleton';
import { ToldToYou } from './notices/told-to-you';

export const dynamic = 'force-dynamic';

/** Today and tomorrow: which case is at risk and why, then what the acting person does next. */
export default async function Today() {
  const { db, person } = await enter('/');
  const { date } = wallClock(now());
  const cases = await listCases(db, date, addDays(date, 2));
  const toCome = (
    <Section title="Cases of today and tomorrow" note="how each stands is being worked out">
      <CaseStandingList
        lines={todayLines(cases, date, new Map(), new Map()).map((line) => ({
          ...line,
          tone: null,
          href: `/cases/${line.id}`,
        }))}
        label="Cases of today and tomorrow"
      />
    </Section>
  );
  return (
    <Page
      title="Today"
      lead={`${dayWords(date)}. Cases of today and tomorrow, against what is in store at this minute.`}
      actions={<NextSteps role={person.role} />}
    >
      <ToldToYou />
      {cases.length === 0 ? (
        <EmptyState
          title="No case today or tomorrow"
          action={<LinkButton href="/cases">See the coming week</LinkButton>}
        >
          Nothing is booked for these two days.
        </EmptyState>
      ) : (
        <Suspense fallback={<FiguresToCome of={cases.length} />}>
          <Figures />
        </Suspense>
      )}
      {cases.length === 0 ? (
        <Suspense fallback={<Skeleton lines={4} label="Looking for what waits for you" />}>
          <YourPart />
        </Suspense>
      ) : (
        // one inside the other: what comes first would push down what is read meanwhile
        <Suspense fallback={toCome}>
          <YourPart />
          <Suspense fallback={toCome}>
            <Standing />
          </Suspense>
        </Suspense>
      )}
    </Page>
  );
}

/** How each case of the two days stands, worked out once for all that the page says of it. */
const linesNow = cache(async () => {
  await pageFirst();
  const { db } = await enter('/');
  const { date: today } = wallClock(now());
  const cases = await listCases(db, today, addDays(today, 2));
  const [readiness, planned] = await Promise.all([
    readinessOf(
      db,
      cases.map(({ id }) => id),
    ),
    plannedStandings(db),
  ]);
  return todayLines(cases, today, readiness, planned.standings);
});

async function Figures() {
  const lines = await linesNow();
  return <FiguresOf of={lines.length} count={(tone) => lines.filter((line) => line.tone === tone).length} />;
}

/** As high as the figures will be. */
const FiguresToCome = ({ of }: { of: number }) => <FiguresOf of={of} count={() => '…'} />;

function FiguresOf({ of, count }: { of: number; count: (tone: string) => number | string }) {
  return (
    <FigureRow>
      <Figure label="Ready" value={count('good')} unit={`of ${of}`} />
      <Figure label="Can’t go as planned" value={count('stop')} />
      <Figure label="Waiting, or in draft" value={count('attention')} />
      <Figure label="Not established" value={count('unknown')} note="no plan, or a value is missing" />
    </FigureRow>
  );
}

async function Standing() {
  const lines = await linesNow();
  const atRisk = lines.filter(({ tone }) => tone !== 'good');
  const ready = lines.filter(({ tone }) => tone === 'good');
  return (
    <>
      <Section
        title="At risk"
        note={atRisk.length === 0 ? 'none' : `${atRisk.length} of ${lines.length}`}
        actions={<Link href="/theatre-list/at-risk">What can be done</Link>}
      >
        {atRisk.length === 0 ? (
          <EmptyState title="No case is at risk">
            Everything planned for these two days is in store and fits.
          </EmptyState>
        ) : (
          <CaseStandingList lines={atRisk} label="Cases at risk" />
        )}
      </Section>
      <ShortSets />
      {ready.length > 0 ? (
        <Section title="Ready" note={`${ready.length} of ${lines.length}`}>
          <CaseStandingList lines={ready} label="Cases that are ready" />
        </Section>
      ) : null}
    </>
  );
}

/** What waits for the person looking, whatever cases there are. */
async function YourPart() {
  await pageFirst();
  return (
    <>
      <KitsToPick />
      <LoansNow />
      <WaitingForYou />
      <DecisionsWaiting />
    </>
  );
}
