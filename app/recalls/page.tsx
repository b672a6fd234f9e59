import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { ButtonRow } from '@/app/_ui/button-row';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { TraceScans } from '@/app/trace/_parts/trace-scans';
import styles from '@/app/trace/trace.module.css';
import { listClosedRecalls, listOpenRecalls, type RecallInList } from '@/db/queries/trace/recallList';
import { capitalised } from '@/lib/wording/numbers';
import { REHEARSAL } from '@/lib/wording/recall';
import { momentWords } from '@/lib/wording/sets';

export const metadata: Metadata = { title: 'Recalls' };
export const dynamic = 'force-dynamic';

/** What is called back, and what was. */
export default async function RecallsPage({ searchParams }: { searchParams: Promise<{ before?: string }> }) {
  const { db } = await enter('/recalls');
  const { before } = await searchParams;
  const olderThan = typeof before === 'string' && before !== '' ? before : null;
  const [open, closed] = await Promise.all([listOpenRecalls(db), listClosedRecalls(db, olderThan)]);
  const at = now();
  return (
    <Page
      bench
      title="Recalls"
      lead="What a maker, an authority or the house calls back: what it reaches is held at once, the people concerned say that they know, and two people close it."
      actions={<LinkButton href="/trace">Trace something</LinkButton>}
    >
      <TraceScans />
      <Section title="Open" note={open.length === 0 ? 'none' : String(open.length)}>
        {open.length === 0 ? (
          <EmptyState title="Nothing is called back">
            Trace a lot, an item, a set or a load, and call it back from there.
          </EmptyState>
        ) : (
          <Recalls recalls={open} at={at} />
        )}
      </Section>
      {closed.recalls.length === 0 && olderThan === null ? null : (
        <Section
          title="Closed"
          note={
            olderThan === null && closed.olderThan === null
              ? String(closed.recalls.length)
              : 'the newest first'
          }
        >
          {closed.recalls.length === 0 ? (
            <p className={styles.soft}>There are no older ones.</p>
          ) : (
            <Recalls recalls={closed.recalls} at={at} />
          )}
          <ButtonRow>
            {olderThan === null ? null : <LinkButton href="/recalls">The newest</LinkButton>}
            {closed.olderThan === null ? null : (
              <LinkButton href={`/recalls?before=${encodeURIComponent(closed.olderThan)}`}>
                Older recalls
              </LinkButton>
            )}
          </ButtonRow>
        </Section>
      )}
    </Page>
  );
}

function Recalls({ recalls, at }: { recalls: readonly RecallInList[]; at: string }) {
  return (
    <ul className={styles.list}>
      {recalls.map((one) => (
        <li key={one.id} className={styles.row}>
          <div>
            <p className={styles.strong}>
              <Link href={`/recalls/${one.id}`}>{one.number}</Link>{' '}
              {one.isRehearsal ? <Status tone="attention">{REHEARSAL}</Status> : null}
            </p>
            <p>{capitalised(one.what)}</p>
            <p className={styles.soft}>{`opened ${momentWords(one.openedAt, at)} by ${one.openedBy}`}</p>
          </div>
          <div>
            <p>{one.reason}</p>
            <p className={styles.soft}>
              {`${one.confirmed} ${one.confirmed === 1 ? 'case' : 'cases'} confirmed, ${one.possible} possible`}
            </p>
          </div>
          <p>{`${one.acknowledged} of ${one.asked} acknowledged`}</p>
        </li>
      ))}
    </ul>
  );
}
