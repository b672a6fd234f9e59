import { eq } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { canBeCounted } from '@/lib/sets/count';
import { turnStep } from '@/lib/sets/setState';
import { benchWords as words } from '@/lib/wording/bench';
import type { Queries } from '../../client';
import type { Person } from '../../queries/people';
import { benchCounts, people, sets } from '../../schema';

export interface OwnCount {
  count: typeof benchCounts.$inferSelect;
  set: typeof sets.$inferSelect;
}

/** The count that somebody works on, if it is theirs, still open, and its set can still be counted. */
export async function ownOpenCount(
  write: Queries,
  countId: string,
  person: Person,
): Promise<Outcome<OwnCount, never>> {
  const [row] = await write
    .select({ count: benchCounts, set: sets, name: people.name })
    .from(benchCounts)
    .innerJoin(sets, eq(sets.id, benchCounts.setId))
    .innerJoin(people, eq(people.id, benchCounts.personId))
    .where(eq(benchCounts.id, countId));
  if (!row) return refused('notFound', words.noSuchCount);
  const { count, set, name } = row;
  if (count.personId !== person.id) return refused('notPermitted', words.notYours(name));
  if (count.closedAt !== null) return refused('frozen', words.closed);
  if (count.abandonedAt !== null) return refused('frozen', words.abandoned);
  if (set.withdrawnAt !== null) return refused('frozen', words.withdrawn(set.code));
  if (!canBeCounted(turnStep.parse(set.step))) return refused('frozen', words.sealed(set.code));
  if (set.versionId !== count.versionId) return refused('frozen', words.versionChanged(set.code));
  return { ok: true, value: { count, set } };
}
