import type { Metadata } from 'next';
import Link from 'next/link';
import { Suspense } from 'react';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { pageFirst } from '@/app/_server/page-first';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Skeleton } from '@/app/_ui/skeleton';
import { type BacktestOnScreen, backtestAll } from '@/db/queries/restock/backtest';
import type { Reading } from '@/db/reader';
import { dateWords } from '@/lib/documents/edition';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { totalsOf } from '@/lib/restock/totals';
import { backtestWords as words } from '@/lib/wording/restock-screens';
import { BacktestTable } from '../_parts/backtest-table';
import { Compared } from '../_parts/compared';
import { StockChart } from '../_parts/stock-chart';

export const metadata: Metadata = { title: 'Backtest of restock' };
export const dynamic = 'force-dynamic';

export default async function BacktestPage() {
  const { db } = await enter('/restock/backtest');
  return (
    <Page
      title="Backtest of restock"
      lead="What the present settings and terms would have done over the recorded history, day by day, beside a plain par level that is simply ordered up to. Both begin with the par level on the shelf."
      breadcrumb={[{ label: 'Restock', href: '/restock' }]}
      actions={<LinkButton href="/settings/restock">Settings</LinkButton>}
    >
      <Suspense fallback={<Skeleton lines={12} label="The record is replayed" />}>
        <Replay db={db} />
      </Suspense>
    </Page>
  );
}

/** The first look of a day replays everything; after that it is kept. */
async function Replay({ db }: { db: Reading }) {
  await pageFirst();
  const tested = await backtestAll(db, now());
  if (tested.items.length > 0) return <Tested tested={tested} />;
  return <EmptyState title="There is too little to replay">{words.tooLittle(tested)}</EmptyState>;
}

function Tested({ tested }: { tested: BacktestOnScreen }) {
  const { from, days, warmUpDays, items, withoutLead, settings } = tested;
  const begins = from === null ? null : addDays(plainDate.parse(from), warmUpDays);
  const [reorder, par] = [totalsOf(items, 'reorder'), totalsOf(items, 'par')];
  return (
    <>
      <p>
        {words.replayed({
          items: items.length,
          days: days - warmUpDays,
          warmUpDays,
          begins: begins && dateWords(begins),
        })}
      </p>
      {withoutLead > 0 ? (
        <p>
          {words.withoutLead(withoutLead)} <Link href="/restock/terms">State it with the maker.</Link>
        </p>
      ) : null}
      <Section title="Both ways" note={words.parIs(settings.parWeeks)}>
        <Compared reorder={reorder} par={par} />
      </Section>
      <Section title="Pieces on the shelf" note="at the end of each week, all items together">
        <StockChart
          weeks={reorder.weeks.map((pieces, at) => ({
            week: at + 1,
            ends: begins === null ? '' : addDays(begins, at * 7 + 6),
            reorder: pieces,
            par: par.weeks[at] ?? 0,
          }))}
        />
      </Section>
      <Section title="Item by item">
        <BacktestTable
          rows={items.map(({ result, ...item }) => ({
            ...item,
            asked: result.reorder.asked,
            cases: result.reorder.cases,
            reorder: shown(result.reorder),
            against: shown(result.par),
          }))}
        />
      </Section>
      <Section title="How it is replayed">
        <ul>
          {words.rules.map((rule) => (
            <li key={rule}>{rule}</li>
          ))}
        </ul>
      </Section>
    </>
  );
}

const shown = ({
  served,
  cases,
  casesServed,
  meanStock,
  pastUseBy,
  orders,
}: BacktestOnScreen['items'][number]['result']['par']) => ({
  served,
  shortCases: cases - casesServed,
  meanStock,
  pastUseBy,
  orders,
});
