import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { onlyTexts, servedQuery } from '@/app/_ui/served-rows';
import { completenessOfSets } from '@/db/queries/completeness';
import { CompletenessFigures } from './completeness-figures';
import { servedSets } from './served-sets';
import { SetList } from './set-list';
import { SET_NAMES } from './set-values';

export const metadata: Metadata = { title: 'Sets' };
export const dynamic = 'force-dynamic';

export default async function SetsPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { db } = await enter('/sets');
  const params = onlyTexts(await searchParams);
  const [first, completeness] = await Promise.all([servedSets(db, params, now()), completenessOfSets(db)]);
  return (
    <Page
      title="Sets"
      lead="Every set of the hospital, first those whose shortage stops something: a booked case’s plan, then a construct the set is meant to allow."
    >
      {first.total === 0 ? null : <CompletenessFigures sets={completeness} />}
      <SetList first={first} firstQuery={servedQuery(SET_NAMES, (name) => params.get(name))} />
    </Page>
  );
}
