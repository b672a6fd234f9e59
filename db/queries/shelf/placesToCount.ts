import { groupBy } from '@/lib/lists/groupBy';
import type { CountClass } from '@/lib/stock/countClass';
import { mayRead, type Reading } from '../../reader';
import { places } from '../../schema';
import { heapsToCount } from './dueCounts';

/** A place with how many heaps of each class are due there. */
export interface PlaceToCount {
  id: string;
  name: string;
  heaps: number;
  due: Record<CountClass, number>;
  /** Heaps that somebody counts now. */
  beingCounted: number;
}

/** Places where anything lies, those with most due first. */
export async function placesToCount(db: Reading, now: string): Promise<PlaceToCount[]> {
  mayRead(db, 'readHospital');
  const [heaps, names] = await Promise.all([
    heapsToCount(db.read, now),
    db.read.select({ id: places.id, name: places.name }).from(places),
  ]);
  const dueOf = (own: typeof heaps, countClass: CountClass) =>
    own.filter((heap) => heap.due && !heap.beingCounted && heap.countClass === countClass).length;
  return [...groupBy(heaps, ({ placeId }) => placeId)]
    .map(([id, own]) => ({
      id,
      name: names.find((place) => place.id === id)?.name ?? '',
      heaps: own.length,
      due: { A: dueOf(own, 'A'), B: dueOf(own, 'B'), C: dueOf(own, 'C') },
      beingCounted: own.filter(({ beingCounted }) => beingCounted).length,
    }))
    .sort(
      (a, b) => b.due.A - a.due.A || b.due.B - a.due.B || b.due.C - a.due.C || a.name.localeCompare(b.name),
    );
}
