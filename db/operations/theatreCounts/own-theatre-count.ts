import { eq } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { theatreCountWords as words } from '@/lib/wording/theatre-counts';
import type { Queries } from '../../client';
import type { Person } from '../../queries/people';
import type { TheatreCountRow } from '../../queries/theatreCounts/counted';
import { people, theatreCounts } from '../../schema';

/** The count in theatre somebody works on, if it is theirs and open. */
export async function ownTheatreCount(
  write: Queries,
  countId: string,
  person: Person,
): Promise<Outcome<TheatreCountRow, never>> {
  const [row] = await write
    .select({ count: theatreCounts, name: people.name })
    .from(theatreCounts)
    .innerJoin(people, eq(people.id, theatreCounts.personId))
    .where(eq(theatreCounts.id, countId));
  if (!row) return refused('notFound', words.noSuchCount);
  const { count, name } = row;
  if (count.personId !== person.id) return refused('notPermitted', words.notYours(name));
  if (count.closedAt !== null || count.abandonedAt !== null) return refused('frozen', words.closed);
  return { ok: true, value: count };
}
