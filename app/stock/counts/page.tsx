import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { readSetting } from '@/db/queries/settings';
import { recentStockCounts } from '@/db/queries/shelf/countScreen';
import { placesToCount } from '@/db/queries/shelf/placesToCount';
import { may } from '@/lib/people/permissions';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import { COUNT_STAGE_TONES, COUNT_STAGE_WORDS, countClassWords } from '@/lib/wording/stock-counts';
import { BeginCount } from './begin-count';
import styles from './counts.module.css';

export const metadata: Metadata = { title: 'Counts of the shelves' };
export const dynamic = 'force-dynamic';

const SHOWN = 40;

/** What is due to be counted, by place and class, and the counts of late. */
export default async function StockCountsPage() {
  const { db, person } = await enter('/stock/counts');
  const at = now();
  const [toCount, counts, rules] = await Promise.all([
    placesToCount(db, at),
    recentStockCounts(db, SHOWN),
    readSetting(db.read, 'stock'),
  ]);
  const open = counts.filter(({ stage }) => stage !== 'done' && stage !== 'abandoned');
  const ended = counts.filter(({ stage }) => stage === 'done' || stage === 'abandoned');
  return (
    <Page
      bench
      title="Counts of the shelves"
      lead="Whoever counts does not see what the record says; differences are shown afterwards. Large ones are counted again by another person, and nothing changes until somebody decides."
      breadcrumb={[{ label: 'Stock', href: '/stock' }]}
      actions={<LinkButton href="/settings/stock">How often, and what is tolerated</LinkButton>}
    >
      {open.length > 0 ? (
        <Section title="Under way" note={String(open.length)}>
          <CountList counts={open} label="Counts under way" now={at} />
        </Section>
      ) : null}
      <Section
        title="Due"
        note={`class A every ${rules.countDaysA} days, B every ${rules.countDaysB}, C every ${rules.countDaysC}; by ${rules.countClassBy === 'valueOfUse' ? 'the value of what is used' : 'must-have class'}`}
      >
        {toCount.length === 0 ? (
          <EmptyState title="Nothing lies on the shelves">What is received can be counted here.</EmptyState>
        ) : (
          <ul className={styles.list} aria-label="Places to count">
            {toCount.map((place) => (
              <li key={place.id} className={styles.place}>
                <p className={styles.name}>{place.name}</p>
                <p className={styles.soft}>
                  {`${place.heaps === 1 ? '1 heap' : `${place.heaps} heaps`}, due: ${place.due.A} of class A, ${place.due.B} of B, ${place.due.C} of C`}
                  {place.beingCounted > 0 ? `; ${place.beingCounted} being counted` : ''}
                </p>
                {may(person, 'countStock') ? (
                  <BeginCount
                    place={{ id: place.id, name: place.name }}
                    due={place.due}
                    free={place.heaps - place.beingCounted}
                  />
                ) : (
                  <span />
                )}
              </li>
            ))}
          </ul>
        )}
      </Section>
      {ended.length > 0 ? (
        <Section title="Ended" note="newest first">
          <CountList counts={ended} label="Counts that have ended" now={at} />
        </Section>
      ) : null}
    </Page>
  );
}

function CountList({
  counts,
  label,
  now: at,
}: {
  counts: Awaited<ReturnType<typeof recentStockCounts>>;
  label: string;
  now: string;
}) {
  return (
    <ul className={styles.list} aria-label={label}>
      {counts.map((count) => (
        <li key={count.id} className={styles.count}>
          <p className={styles.name}>
            <Link href={`/stock/counts/${count.id}`}>
              {`${count.place}, ${countClassWords(count.countClass)}`}
            </Link>
          </p>
          <p className={styles.soft}>
            {`${count.heaps === 1 ? '1 heap' : `${count.heaps} heaps`}, begun ${momentWords(count.begunAt, at)} by ${count.begunBy}`}
          </p>
          <p>
            <Status tone={count.mine ? 'attention' : COUNT_STAGE_TONES[count.stage]}>
              {count.mine ? 'yours, go on' : capitalised(COUNT_STAGE_WORDS[count.stage])}
            </Status>
          </p>
        </li>
      ))}
    </ul>
  );
}
