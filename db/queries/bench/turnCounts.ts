import { and, asc, eq, gte, isNotNull, isNull, max } from 'drizzle-orm';
import type { BenchEntry } from '@/lib/bench/act';
import type { CountPurpose } from '@/lib/bench/closing';
import type { Queries } from '../../client';
import { entryFromRow } from '../../mappers/bench';
import { benchCounts, benchEntries, countLines, disputedLines, packs, people, type sets } from '../../schema';

type SetRow = Pick<typeof sets.$inferSelect, 'id' | 'turnId' | 'versionId'>;

/** A line as one closed count of the present turn states it. */
export interface StatedLine {
  lineId: string;
  countId: string;
  personId: string;
  person: string;
  purpose: CountPurpose;
  beganAt: string;
  closedAt: string;
}

/**
 * From when the counts of this turn are good: what was counted before the set was last packed says nothing about what
 * is in it once its wrap was opened again.
 */
export async function countsGoodFrom(read: Queries, set: SetRow): Promise<string> {
  if (set.turnId === null) return '';
  const [row] = await read
    .select({ at: max(packs.packedAt) })
    .from(packs)
    .where(and(eq(packs.setId, set.id), eq(packs.turnId, set.turnId)));
  return row?.at ?? '';
}

/** Every statement of the closed counts that are good in the present turn, the oldest first. */
export async function statedLines(read: Queries, set: SetRow): Promise<StatedLine[]> {
  if (set.turnId === null) return [];
  const rows = await read
    .select({
      lineId: countLines.lineId,
      countId: benchCounts.id,
      personId: benchCounts.personId,
      person: people.name,
      purpose: benchCounts.purpose,
      beganAt: benchCounts.beganAt,
      closedAt: benchCounts.closedAt,
    })
    .from(countLines)
    .innerJoin(benchCounts, eq(benchCounts.id, countLines.countId))
    .innerJoin(people, eq(people.id, benchCounts.personId))
    .where(
      and(
        eq(benchCounts.setId, set.id),
        eq(benchCounts.turnId, set.turnId),
        eq(benchCounts.versionId, set.versionId),
        isNotNull(benchCounts.closedAt),
        gte(benchCounts.beganAt, await countsGoodFrom(read, set)),
      ),
    )
    .orderBy(asc(benchCounts.closedAt), asc(benchCounts.id));
  return rows.map((row) => ({
    ...row,
    purpose: row.purpose as CountPurpose,
    closedAt: row.closedAt ?? '',
  }));
}

/** Lines of a set on which two counts differ and nobody has settled it. */
export async function openDisputes(read: Queries, setId: string) {
  return read
    .select()
    .from(disputedLines)
    .where(and(eq(disputedLines.setId, setId), isNull(disputedLines.settledAt)));
}

/** The entries of a count, in the order they arrived. */
export async function entriesOf(read: Queries, countId: string): Promise<BenchEntry[]> {
  const rows = await read
    .select()
    .from(benchEntries)
    .where(eq(benchEntries.countId, countId))
    .orderBy(asc(benchEntries.seq));
  return rows.map(entryFromRow);
}

/** Whether the counts of this turn can still change: closed neither way. */
export const isOpen = and(isNull(benchCounts.closedAt), isNull(benchCounts.abandonedAt));
