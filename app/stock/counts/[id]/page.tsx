import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { FollowOthers } from '@/app/_kit/follow-others';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { Status } from '@/app/_ui/status';
import { countScreen } from '@/db/queries/shelf/countScreen';
import { receivableItems } from '@/db/queries/shelf/receiving';
import { may } from '@/lib/people/permissions';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import { COUNT_STAGE_TONES, COUNT_STAGE_WORDS, countClassWords } from '@/lib/wording/stock-counts';
import { CountAgain, GiveUp } from './count-acts';
import { Counting } from './counting';
import { Results } from './results';

export const metadata: Metadata = { title: 'Count of the shelves' };
export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

/** One count: for whoever counts, their figures alone; for the others, what came of it once it is closed. */
export default async function StockCountPage({ params }: Props) {
  const { db, person } = await enter('/stock/counts/[id]');
  const at = now();
  const count = await countScreen(db, (await params).id);
  if (!count) notFound();
  const counting = count.part === 'counts' || count.part === 'countsAgain';
  const mayDecide = may(person, 'decideStockCount');
  return (
    <Page
      bench
      title={`Count ${count.place}`}
      mark={
        <Status tone={COUNT_STAGE_TONES[count.stage]}>{capitalised(COUNT_STAGE_WORDS[count.stage])}</Status>
      }
      lead={`${capitalised(countClassWords(count.countClass))}, begun ${momentWords(count.begunAt, at)} by ${count.begunBy}.${count.recountBy === null ? '' : ` Counted again by ${count.recountBy}.`}`}
      breadcrumb={[
        { label: 'Stock', href: '/stock' },
        { label: 'Counts', href: '/stock/counts' },
      ]}
    >
      {counting ? null : <FollowOthers />}
      {counting ? (
        <Counting count={count} items={count.part === 'counts' ? await addableItems(db) : []} />
      ) : null}
      {count.part === 'waits' ? (
        <p>
          {`${count.counted} of ${count.of} counted so far. What was found is shown when the count is closed.`}
        </p>
      ) : null}
      {count.part === 'mayCountAgain' ? <CountAgain count={count} /> : null}
      {count.part === 'sees' && count.stage !== 'abandoned' ? (
        <Results count={count} mayDecide={mayDecide && !counted(count, person.name)} />
      ) : null}
      {count.stage === 'counting' && (counting || mayDecide) ? <GiveUp count={count} /> : null}
    </Page>
  );
}

const counted = ({ begunBy, recountBy }: { begunBy: string; recountBy: string | null }, name: string) =>
  begunBy === name || recountBy === name;

async function addableItems(db: Parameters<typeof receivableItems>[0]) {
  return (await receivableItems(db)).map(({ id, code, name }) => ({ value: id, label: `${code}, ${name}` }));
}
