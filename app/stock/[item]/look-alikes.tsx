import Link from 'next/link';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { LookAlikeOnShelf } from '@/db/queries/shelf/lookAlikesOnShelf';
import { LIKENESS_WORDS } from '@/lib/wording/bench';
import { listWords } from '@/lib/wording/numbers';
import styles from './shelf.module.css';

/** What lies on the shelves and is easily taken for this item; where both lie in one place, that they be kept apart. */
export function LookAlikes({
  here,
  name,
  alike,
}: {
  /** Places this item lies in. */
  here: readonly string[];
  name: string;
  alike: readonly LookAlikeOnShelf[];
}) {
  if (alike.length === 0) return null;
  return (
    <Section title="Easily taken for" note={`${alike.length} on the shelves`}>
      <ul className={styles.alike} aria-label={`Easily taken for ${name}`}>
        {alike.map((other) => {
          const together = other.places.filter(({ id }) => here.includes(id));
          return (
            <li key={other.itemId}>
              <Link href={`/stock/${other.itemId}`}>{other.name}</Link>
              <span className={styles.soft}>{`${other.code}, ${LIKENESS_WORDS[other.because]}`}</span>
              {together.length > 0 ? (
                <Status tone="attention">
                  {`both lie in ${listWords(together.map((place) => place.name))}: keep them apart`}
                </Status>
              ) : (
                <span className={styles.soft}>
                  {`lies in ${listWords(other.places.map((place) => place.name))}`}
                </span>
              )}
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
