import { desc, eq } from 'drizzle-orm';
import type { Queries } from '../client';
import { counts, people, setContents } from '../schema';

/** What a set holds now, for showing beside what a refused counter found. */
export interface ContentsNow {
  revision: number;
  lines: { lineId: string; found: number; unsound: number; condition: string }[];
  /** Who counted it last, when anybody has. */
  countedBy: string | null;
  countedAt: string | null;
}

/** Reads the present contents of a set, inside or outside a write. */
export async function contentsNow(
  read: Queries,
  { id, revision }: { id: string; revision: number },
): Promise<ContentsNow> {
  const rows = await read.select().from(setContents).where(eq(setContents.setId, id));
  const [last] = await read
    .select({ by: people.name, at: counts.countedAt })
    .from(counts)
    .innerJoin(people, eq(people.id, counts.countedBy))
    .where(eq(counts.setId, id))
    .orderBy(desc(counts.countedAt))
    .limit(1);
  return {
    revision,
    lines: rows.map(({ lineId, found, unsound, condition }) => ({ lineId, found, unsound, condition })),
    countedBy: last?.by ?? null,
    countedAt: last?.at ?? null,
  };
}
