import { and, eq, inArray } from 'drizzle-orm';
import type { CountPurpose } from '@/lib/bench/closing';
import { mayRead, type Reading } from '../../reader';
import { benchCounts, people, sets } from '../../schema';
import { idsAfter, inOrderOf, type PlaceInList } from './idsAfter';

/** That a set was counted at the bench, by whom and when: never what was found. */
export interface BenchCountRecorded {
  id: string;
  set: { id: string; code: string };
  purpose: CountPurpose;
  person: { id: string; name: string };
  beganAt: string;
  closedAt: string | null;
  abandonedAt: string | null;
}

const COLUMNS = { count: benchCounts, code: sets.code, by: people.name };

/** Counts at the bench, the last begun first; of one set where it is named. `undefined`: the place is not there any more. */
export async function benchCountsRecorded(
  db: Reading,
  { setId, ...place }: PlaceInList & { setId: string | null },
): Promise<BenchCountRecorded[] | undefined> {
  mayRead(db, 'readHospital');
  const where = setId === null ? undefined : eq(benchCounts.setId, setId);
  const ids = await idsAfter(db.read, { table: benchCounts, id: benchCounts.id, where }, place);
  return ids && inOrderOf(ids, await recorded(db, ids));
}

/** One count at the bench; `null` where there is none of that id. */
export async function findBenchCountRecorded(db: Reading, id: string): Promise<BenchCountRecorded | null> {
  mayRead(db, 'readHospital');
  return (await recorded(db, [id]))[0] ?? null;
}

async function recorded({ read }: Reading, ids: readonly string[]): Promise<BenchCountRecorded[]> {
  const rows = await read
    .select(COLUMNS)
    .from(benchCounts)
    .innerJoin(sets, eq(sets.id, benchCounts.setId))
    .innerJoin(people, eq(people.id, benchCounts.personId))
    .where(and(inArray(benchCounts.id, [...ids])));
  return rows.map(({ count, code, by }) => ({
    id: count.id,
    set: { id: count.setId, code },
    purpose: count.purpose as CountPurpose,
    person: { id: count.personId, name: by },
    beganAt: count.beganAt,
    closedAt: count.closedAt,
    abandonedAt: count.abandonedAt,
  }));
}
