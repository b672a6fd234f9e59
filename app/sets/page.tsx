import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { database } from '@/app/_server/database';
import { Page } from '@/app/_ui/page';
import { loadSetStandings } from '@/db/queries/setStandings';
import { setLines } from './set-lines';
import { SetList } from './set-list';

export const metadata: Metadata = { title: 'Sets' };
export const dynamic = 'force-dynamic';

export default async function SetsPage() {
  const at = now();
  const standings = await loadSetStandings(database(), { now: at });
  return (
    <Page
      title="Sets"
      lead="Every set of the hospital, first those whose shortage stops something: a booked case’s plan, then a construct the set is meant to allow."
    >
      <SetList lines={setLines(standings, at)} />
    </Page>
  );
}
