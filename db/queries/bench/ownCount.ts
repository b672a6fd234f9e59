import { and, eq } from 'drizzle-orm';
import type { BenchEntry } from '@/lib/bench/act';
import type { CountPurpose } from '@/lib/bench/closing';
import { mayRead, type Reading } from '../../reader';
import { benchCounts } from '../../schema';
import { entriesOf, isOpen } from './turnCounts';

export interface OwnOpenCount {
  id: string;
  setId: string;
  purpose: CountPurpose;
  beganAt: string;
  entries: BenchEntry[];
}

/** The count a person has open on a set, with what they entered so far; nobody else’s is ever read here. */
export async function loadOwnCount(
  db: Reading,
  personId: string,
  setId: string,
): Promise<OwnOpenCount | null> {
  mayRead(db, 'readHospital');
  const [row] = await db.read
    .select()
    .from(benchCounts)
    .where(and(eq(benchCounts.setId, setId), eq(benchCounts.personId, personId), isOpen));
  return row
    ? {
        id: row.id,
        setId,
        purpose: row.purpose as CountPurpose,
        beganAt: row.beganAt,
        entries: await entriesOf(db.read, row.id),
      }
    : null;
}

/** Of which set a count is, and whose; `null` where there is none of that id. */
export async function findBenchCount(
  db: Reading,
  countId: string,
): Promise<{ setId: string; personId: string; versionId: string } | null> {
  mayRead(db, 'readHospital');
  const [row] = await db.read
    .select({
      setId: benchCounts.setId,
      personId: benchCounts.personId,
      versionId: benchCounts.versionId,
    })
    .from(benchCounts)
    .where(eq(benchCounts.id, countId));
  return row ?? null;
}
