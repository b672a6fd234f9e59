import { addDays, type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { mayRead, type Reading } from '../../reader';
import { type ListedCase, listCases } from '../cases';

/** What orders a list of cases: the day, then the time, then the id. */
export const placeOfCase = ({ caseDate, startsAt, id }: ListedCase): [string, string, string] => [
  caseDate,
  startsAt,
  id,
];

/** A page is looked for in stretches of days, each twice as long as the one before, the first of a week. */
const FIRST_DAYS = 7;

/**
 * Cases from one date up to, but without, another, in the order of day and time, those after one of them; at most `limit`. However
 * far the dates lie apart, only days are read until there are enough.
 */
export async function casesAfter(
  db: Reading,
  { from, before, cancelledToo }: { from: PlainDate; before: PlainDate; cancelledToo: boolean },
  { after, limit }: { after: readonly (string | number)[] | null; limit: number },
): Promise<ListedCase[]> {
  mayRead(db, 'readHospital');
  const found: ListedCase[] = [];
  let day = after === null ? from : plainDate.catch(from).parse(after[0]);
  for (let days = FIRST_DAYS; day < before && found.length < limit; days *= 2) {
    const end = addDays(day, days);
    const until = end < before ? end : before;
    const rows = await listCases(db, day, until, { cancelledToo });
    found.push(...rows.filter((row) => after === null || isLater(placeOfCase(row), after)).sort(inOrder));
    day = until;
  }
  return found.slice(0, limit);
}

const inOrder = (a: ListedCase, b: ListedCase): number => (isLater(placeOfCase(a), placeOfCase(b)) ? 1 : -1);

function isLater(place: readonly string[], than: readonly (string | number)[]): boolean {
  for (const [at, part] of place.entries()) {
    const other = String(than[at] ?? '');
    if (part !== other) return part > other;
  }
  return false;
}
