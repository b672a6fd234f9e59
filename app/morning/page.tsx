import type { Metadata } from 'next';
import Link from 'next/link';
import { Suspense } from 'react';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { pageFirst } from '@/app/_server/page-first';
import { Page } from '@/app/_ui/page';
import { Skeleton } from '@/app/_ui/skeleton';
import { Status } from '@/app/_ui/status';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import styles from './morning.module.css';
import { type Topic, topicsOf } from './topics';

export const metadata: Metadata = { title: 'This morning' };
export const dynamic = 'force-dynamic';

/** Lines of each topic that are shown; the rest are where its heading leads. */
const MOST = 4;

/** All a theatre manager sees to at the beginning of a day, on one page; each line leads to its place. */
export default async function Morning() {
  await enter('/morning');
  const { date, time } = wallClock(now());
  return (
    <Page
      title="This morning"
      lead={`${dayWords(date)}, as it was at ${time}. Each line leads to its place.`}
    >
      <Suspense fallback={<Skeleton lines={14} label="Looking through the house" />}>
        <Topics />
      </Suspense>
    </Page>
  );
}

async function Topics() {
  await pageFirst();
  const { db } = await enter('/morning');
  const topics = await topicsOf(db, now());
  return (
    <div className={styles.topics}>
      {topics.map((topic) => (
        <TopicPart key={topic.href} topic={topic} />
      ))}
    </div>
  );
}

function TopicPart({ topic: { title, href, count, tone, none, lines } }: { topic: Topic }) {
  const id = `topic-${href.replaceAll('/', '-')}`;
  return (
    <section className={styles.topic} aria-labelledby={id}>
      <div className={styles.head}>
        <h2 id={id} className={styles.title}>
          <Link href={href}>{title}</Link>
        </h2>
        <Status tone={count === 0 ? 'good' : tone}>{count === 0 ? 'none' : count}</Status>
      </div>
      {count === 0 ? (
        <p className={styles.detail}>{none}</p>
      ) : (
        <ul className={styles.lines}>
          {lines.slice(0, MOST).map((line) => (
            <li key={line.key} className={styles.line}>
              <Link href={line.href}>{line.what}</Link>
              <p className={styles.detail}>{line.detail}</p>
            </li>
          ))}
        </ul>
      )}
      {lines.length > MOST ? (
        <p className={styles.more}>
          <Link href={href}>{`${lines.length - MOST} more`}</Link>
        </p>
      ) : null}
    </section>
  );
}
