import { eq } from 'drizzle-orm';
import { type ScanAnswer, scanAnswer } from '@/lib/scanning/meaning';
import type { Queries } from '../../client';
import { people, scans } from '../../schema';

type ScanRow = typeof scans.$inferSelect;

/** A stored scan as it was answered. */
export async function answerFromRow(read: Queries, row: ScanRow): Promise<ScanAnswer> {
  const [before] =
    row.beforeId === null
      ? []
      : await read
          .select({ scanId: scans.id, at: scans.doneAt, by: people.name })
          .from(scans)
          .innerJoin(people, eq(people.id, scans.personId))
          .where(eq(scans.id, row.beforeId));
  const { id, verdict, meaning, says, sentence, doneAt, enteredAt, late } = row;
  return scanAnswer.parse({
    id,
    verdict,
    meaning,
    says,
    sentence,
    before: before ?? null,
    doneAt,
    enteredAt,
    late,
  });
}
