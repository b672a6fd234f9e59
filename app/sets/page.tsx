import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { keptSetStandings } from '@/db/queries/keptStandings';
import { setLines } from './set-lines';
import { SetList } from './set-list';

export const metadata: Metadata = { title: 'Sets' };
export const dynamic = 'force-dynamic';

export default async function SetsPage() {
  const { db } = await enter('/sets');
  const at = now();
  const standings = await keptSetStandings(db, at);
  return (
    <Page
      title="Sets"
      lead="Every set of the hospital, first those whose shortage stops something: a booked case’s plan, then a construct the set is meant to allow."
    >
      <SetList lines={setLines(standings, at)} />
    </Page>
  );
}
