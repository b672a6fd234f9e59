import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { FollowScans } from '@/app/_turns/follow-scans';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { loadWorkQueue } from '@/db/queries/turns/workQueue';
import { may } from '@/lib/people/permissions';
import { minutesWords } from '@/lib/wording/work';
import { type WorkLine, workLines } from './queue-lines';
import { WorkList } from './work-list';

export const metadata: Metadata = { title: 'What to do next' };
export const dynamic = 'force-dynamic';

/** As many of a section are shown at once: nobody takes up more before looking again. */
const SHOWN = 40;

/** Every open set with its one next step, the late ones first. */
export default async function WorkPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { db, person } = await enter('/work');
  const { all } = await searchParams;
  const at = now();
  const queue = await loadWorkQueue(db, at);
  const lines = workLines(queue, person.role, at);
  const wanted = lines.filter((line) => line.wanted !== null);
  const inTurn = lines.filter((line) => line.wanted === null);
  const late = inTurn.filter((line) => line.late !== null);
  const needed = inTurn.filter((line) => line.late === null && line.need !== null);
  const others = inTurn.filter((line) => line.late === null && line.need === null);
  const first = lines.find(({ mayAct }) => mayAct)?.set.id ?? null;
  return (
    <Page
      bench
      title="What to do next"
      lead="Every open set with its one next step: by when a booked case needs it, then by what its shortage stops. Scan a set’s label to open it."
      actions={
        <>
          <LinkButton href="/work/board">Today’s turns by step</LinkButton>
          <LinkButton href="/work/short">Short sets</LinkButton>
          {may(person, 'packSet') ? <LinkButton href="/packs/new">Pack a single item</LinkButton> : null}
        </>
      }
    >
      <FollowScans />
      {lines.length === 0 ? (
        <EmptyState title="Nothing waits">Every set in service is in the sterile store.</EmptyState>
      ) : null}
      {wanted.length > 0 ? (
        <Section title="Wanted sooner" note={`${wanted.length}, before all others`}>
          <WorkSection lines={wanted} name="wanted" all={all} label="Sets wanted sooner" first={first} />
        </Section>
      ) : null}
      {late.length > 0 ? (
        <Section title="Late" note={`${late.length} of ${lines.length} open sets`}>
          <WorkSection lines={late} name="late" all={all} label="Late sets" first={first} />
        </Section>
      ) : null}
      {needed.length > 0 ? (
        <Section title="Needed for a booked case" note={`${needed.length}, the soonest first`}>
          <WorkSection
            lines={needed}
            name="needed"
            all={all}
            label="Sets a booked case needs"
            first={first}
          />
        </Section>
      ) : null}
      {others.length > 0 ? (
        <Section title="No booked case waits for them" note={`${others.length}, by what a shortage stops`}>
          <WorkSection lines={others} name="others" all={all} label="Other open sets" first={first} />
        </Section>
      ) : null}
      <p>
        {`A set is needed in the sterile store ${minutesWords(queue.leadMinutes)} before its case. A case counts for a set that is promised to it; where none is, for the quickest free set of a kind that holds a plate its plan states. Times are estimates: past turns say nothing of today’s queue at the steriliser.`}
      </p>
    </Page>
  );
}

/** The first of a section, and the way to all of it. */
function WorkSection({
  lines,
  name,
  all,
  label,
  first,
}: {
  lines: WorkLine[];
  name: string;
  /** The section that is asked for whole. */
  all: string | string[] | undefined;
  label: string;
  first: string | null;
}) {
  const isWhole = all === name || lines.length <= SHOWN;
  return (
    <>
      <WorkList lines={isWhole ? lines : lines.slice(0, SHOWN)} label={label} first={first} />
      {isWhole ? null : (
        <p>
          <Link href={`/work?all=${name}`}>{`All ${lines.length} of them`}</Link>
        </p>
      )}
    </>
  );
}
