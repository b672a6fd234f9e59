import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { findSet } from '@/db/queries/sets';
import { loadSetHistory, type SetEvent, TURNS_A_PAGE } from '@/db/queries/turns/setHistory';
import { never } from '@/lib/identity/result';
import { stepSentence, setHistoryWords as words } from '@/lib/wording/setHistory';
import { momentWords } from '@/lib/wording/sets';
import styles from './history.module.css';

export const metadata: Metadata = { title: 'Turns of a set' };
export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ page?: string }> };

/** Everything that ever happened to a set, turn by turn, the newest turn first. */
export default async function SetHistoryPage({ params, searchParams }: Props) {
  const { db } = await enter('/sets/[id]/history');
  const [{ id }, { page: asked }] = await Promise.all([params, searchParams]);
  const set = await findSet(db, id);
  if (!set) notFound();
  const at = now();
  const page = /^[1-9]\d{0,5}$/.test(asked ?? '') ? Number(asked) : 1;
  const { turns, total } = await loadSetHistory(db, set.id, page);
  const pages = Math.max(1, Math.ceil(total / TURNS_A_PAGE));
  return (
    <Page
      bench
      title={`Turns of ${set.code}`}
      lead="What was done with it, when and by whom. Where something was entered later than it was done, both moments stand."
      breadcrumb={[
        { label: 'Sets', href: '/sets' },
        { label: set.code, href: `/sets/${set.id}` },
      ]}
    >
      {turns.length === 0 ? (
        <EmptyState title={total === 0 ? 'No turn is on record yet' : 'No turn on this page'}>
          {total === 0 ? 'Its first step begins its first turn.' : `There are ${pages} pages.`}
        </EmptyState>
      ) : (
        turns.map((turn) => (
          <Section
            key={turn.id}
            title={`Turn ${turn.number}`}
            note={`began ${momentWords(turn.beganAt, at)}`}
          >
            <ol className={styles.events}>
              {turn.events.map((event, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a history only grows at its end
                <li key={index} data-kind={event.kind}>
                  <span className={styles.when}>{momentWords(event.at, at)}</span>
                  <span className={styles.what}>
                    <EventWords event={event} />
                    {event.enteredAt === null ? null : (
                      <span className={styles.soft}>{`entered ${momentWords(event.enteredAt, at)}`}</span>
                    )}
                  </span>
                  <span className={styles.soft}>{event.by}</span>
                </li>
              ))}
            </ol>
          </Section>
        ))
      )}
      {pages > 1 ? (
        <nav aria-label="Pages of turns" className={styles.pages}>
          {page > 1 ? (
            <LinkButton href={`/sets/${set.id}/history?page=${page - 1}`}>Newer turns</LinkButton>
          ) : null}
          <span>{`Page ${Math.min(page, pages)} of ${pages}, ${total} turns`}</span>
          {page < pages ? (
            <LinkButton href={`/sets/${set.id}/history?page=${page + 1}`}>Older turns</LinkButton>
          ) : null}
        </nav>
      ) : null}
    </Page>
  );
}

function EventWords({ event }: { event: SetEvent }) {
  switch (event.kind) {
    case 'step':
      return (
        <>
          <strong>{stepSentence(event.step.from, event.step.step, event.step.because)}</strong>
          {event.step.note === null ? null : <span>{`“${event.step.note}”`}</span>}
        </>
      );
    case 'count':
      return words.counted;
    case 'pack':
      return (
        <>
          {words.packed(event.number, event.barrier, event.short)}
          {event.load === null ? null : (
            <span>
              {'load '}
              <Link href={`/loads/${event.load.id}`}>{event.load.number}</Link>
            </span>
          )}
        </>
      );
    case 'decision':
      return (
        <>
          {words.decided(event.how)}
          <span>{`“${event.reason}”`}</span>
        </>
      );
    case 'aside':
      return words.aside(event.quantity, event.item, event.condition);
    case 'refillAsked':
      return words.refillAsked(event.quantity, event.item);
    case 'refillFixed':
      return words.refillFixed(event.quantity, event.item);
    case 'entry':
      return words.entry(event.action, event.detail);
    default:
      return never(event);
  }
}
