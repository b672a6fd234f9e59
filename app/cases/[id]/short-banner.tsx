import Link from 'next/link';
import { Status } from '@/app/_ui/status';
import type { ShortForCase } from '@/db/queries/short/shortForCase';
import type { ItemId } from '@/lib/identity/ids';
import { momentWords, stopAbout, stopWords } from '@/lib/wording/sets';
import { LAPSE_WORDS } from '@/lib/wording/short';

/** Sets that go short for this case: of what, what that stops, and until when the decision holds. */
export function ShortBanner({
  sets,
  name,
  now,
}: {
  sets: readonly ShortForCase[];
  name: (id: ItemId) => string;
  now: string;
}) {
  if (sets.length === 0) return null;
  return (
    <ul aria-label="Sets that go short for this case">
      {sets.map(({ setId, code, lines, stops, until, lapses }) => (
        <li key={setId}>
          <Status tone={lapses.length > 0 ? 'stop' : 'attention'}>SHORT</Status>{' '}
          <Link href={`/sets/${setId}`}>{code}</Link>
          {`: ${lines.map(({ itemId, short }) => `${short} × ${name(itemId)}`).join(', ')} short. `}
          {stops.map((stop) => `${stopAbout(stop, now)}: ${stopWords(stop, name)}. `)}
          {lapses.length > 0
            ? `The decision no longer holds. ${lapses.map((lapse) => LAPSE_WORDS[lapse]).join(' ')}`
            : until === null
              ? 'The decision holds for this turn of the set.'
              : `The decision holds until ${momentWords(until, now)}.`}
        </li>
      ))}
    </ul>
  );
}
