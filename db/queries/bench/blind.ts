import { and, eq, ne } from 'drizzle-orm';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { benchCounts } from '../../schema';
import { isOpen } from './turnCounts';

/**
 * Whether a person must not see what anybody found in a set: they have a count or a blind check of it open themselves.
 * No screen shows them contents, counts, shortages or totals of that set until they have closed it.
 */
export async function blindFor(db: Reading, personId: string, setId: string): Promise<boolean> {
  mayRead(db, 'readHospital');
  return isBlind(db.read, personId, setId);
}

/** The same inside or outside a write. */
export async function isBlind(read: Queries, personId: string, setId: string): Promise<boolean> {
  const rows = await read
    .select({ id: benchCounts.id })
    .from(benchCounts)
    .where(
      and(
        eq(benchCounts.setId, setId),
        eq(benchCounts.personId, personId),
        ne(benchCounts.purpose, 'settle'),
        isOpen,
      ),
    )
    .limit(1);
  return rows.length > 0;
}

/** Every set a person is blind to, for lists. */
export async function blindSetsOf(db: Reading, personId: string): Promise<ReadonlySet<string>> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ setId: benchCounts.setId })
    .from(benchCounts)
    .where(and(eq(benchCounts.personId, personId), ne(benchCounts.purpose, 'settle'), isOpen));
  return new Set(rows.map(({ setId }) => setId));
}
