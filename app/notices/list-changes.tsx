import Link from 'next/link';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { ListChanges } from '@/db/queries/theatre/listChanges';
import { listChangeSentence, listChangeWords as words } from '@/lib/wording/list-changes';
import { momentWords } from '@/lib/wording/sets';
import { ListSeenButton } from './list-seen-button';
import styles from './notices.module.css';

/** What others changed on the reader's list since they last looked, case by case. */
export function ChangedOnList({ changes, now }: { changes: ListChanges; now: string }) {
  const { own, since, upTo, cases, count, more } = changes;
  const nameIn = (all: ListChanges['names']['sets']) => (id: string) =>
    all.find((one) => one.id === id)?.name ?? id;
  const names = { theatre: nameIn(changes.names.theatres), set: nameIn(changes.names.sets) };
  return (
    <Section
      title={words.title(own)}
      note={`${count}, ${words.since(since === null ? null : momentWords(since, now))}`}
      actions={count > 0 ? <ListSeenButton upTo={upTo} /> : null}
    >
      {count === 0 ? <p>Nothing that somebody else did.</p> : null}
      {cases.length > 0 ? (
        <ul className={styles.list} aria-label={words.title(own)}>
          {cases.map(({ id, reference, startsAt, cancelled, changes: its }) => (
            <li key={id}>
              <p className={styles.when}>
                <Link href={`/cases/${id}`}>{reference}</Link>
                <br />
                {momentWords(startsAt, now)}
              </p>
              <div>
                {cancelled ? <Status tone="stop">Cancelled</Status> : null}
                {its.map(({ seq, at, by, change }) => (
                  <p key={seq}>
                    <span className={styles.when}>{momentWords(at, now)}</span>{' '}
                    {listChangeSentence(change, names, by)}
                  </p>
                ))}
              </div>
            </li>
          ))}
        </ul>
      ) : null}
      {more ? <p>{words.more}</p> : null}
    </Section>
  );
}
