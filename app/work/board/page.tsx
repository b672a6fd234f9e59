import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { FollowScans } from '@/app/_turns/follow-scans';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { loadWorkQueue } from '@/db/queries/turns/workQueue';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { boardGroups } from './board-groups';
import { MOST_OF_A_STEP, RoundSheet } from './round-sheet';

export const metadata: Metadata = { title: 'Today’s turns by step' };
export const dynamic = 'force-dynamic';

/** Where every set is, by step in the order of the turn. */
export default async function BoardPage() {
  const { db, person } = await enter('/work/board');
  const at = now();
  const groups = boardGroups(await loadWorkQueue(db, at), person.role, at, MOST_OF_A_STEP);
  return (
    <Page
      bench
      title="Today’s turns by step"
      lead={`${dayWords(wallClock(at).date)}, as it is at ${wallClock(at).time}. Scan a set’s label to open it with its next step in focus.`}
      breadcrumb={[{ label: 'What to do next', href: '/work' }]}
      actions={<LinkButton href="/holds">Everything held</LinkButton>}
    >
      <FollowScans />
      <RoundSheet groups={groups} />
    </Page>
  );
}
