import { and, eq, exists, isNotNull, ne, or } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import type { Queries } from '../../client';
import { mayRead, type Reading, THE_PROGRAM } from '../../reader';
import { benchCounts } from '../../schema';
import { isOpen } from './turnCounts';

const others = alias(benchCounts, 'others');

/**
 * Sets of which a person must not see what anybody found: they have a blind check of it open, or a count beside one that
 * somebody else has closed in this turn. No query shows them contents, counts or shortages of these until they close it.
 */
async function blindSets(read: Queries, personId: string): Promise<ReadonlySet<string>> {
  const closedByAnother = read
    .select({ id: others.id })
    .from(others)
    .where(
      and(eq(others.turnId, benchCounts.turnId), ne(others.personId, personId), isNotNull(others.closedAt)),
    );
  const rows = await read
    .select({ setId: benchCounts.setId })
    .from(benchCounts)
    .where(
      and(
        eq(benchCounts.personId, personId),
        isOpen,
        or(eq(benchCounts.purpose, 'check'), and(eq(benchCounts.purpose, 'count'), exists(closedByAnother))),
      ),
    );
  return new Set(rows.map(({ setId }) => setId));
}

/** Whether a person must not see what anybody found in a set, inside or outside a write. */
export async function isBlind(read: Queries, personId: string, setId: string): Promise<boolean> {
  return (await blindSets(read, personId)).has(setId);
}

/** The same for a screen. */
export async function blindFor(db: Reading, personId: string, setId: string): Promise<boolean> {
  mayRead(db, 'readHospital');
  return isBlind(db.read, personId, setId);
}

/** Sets the reader is blind to; none for the program itself. */
export async function hiddenFrom({ read, reader }: Reading): Promise<ReadonlySet<string>> {
  return reader === THE_PROGRAM ? new Set() : blindSets(read, reader.id);
}
