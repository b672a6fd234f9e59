import { and, desc, eq, inArray } from 'drizzle-orm';
import type { LastThere } from '@/lib/loans/declaration';
import type { Discrepancy } from '@/lib/loans/reconcile';
import type { Queries } from '../../client';
import { configurationLines, countLines, counts } from '../../schema';
import type { LoanRecord } from './facts';

/**
 * Where a missing piece was last there, or a damaged one last in order: the newest count that found as many as came, at
 * the bench or on arrival; else only the list. A line outside the catalogue is in no count of the bench.
 */
export async function lastThere(
  read: Queries,
  { lines, trays, counting, counts: own }: LoanRecord,
  { lineId, stage }: Pick<Discrepancy, 'lineId' | 'stage'>,
): Promise<LastThere> {
  if (stage === 'in') return { step: 'list', at: null };
  const line = lines.find(({ id }) => id === lineId);
  const came = counting.in.figures.get(lineId)?.sound ?? 0;
  const arrival = own
    .filter((one) => one.stage === 'in')
    .map(({ at }) => at)
    .sort()
    .at(-1);
  const set = trays.find(({ row }) => row.tray === line?.tray)?.set;
  if (line?.itemId && set) {
    // lines of one item are one line at the bench
    const ofItem = lines
      .filter((one) => one.tray === line.tray && one.itemId === line.itemId)
      .map(({ id }) => id);
    const wanted = ofItem.reduce((sum, id) => sum + (counting.in.figures.get(id)?.sound ?? 0), 0);
    const found = await benchCounts(read, set, line.itemId);
    const whole = found.find(({ pieces }) => pieces >= wanted);
    if (whole) return { step: 'benchCount', at: whole.at };
  }
  return came > 0 || arrival === undefined
    ? { step: 'arrivalCount', at: arrival ?? null }
    : { step: 'list', at: null };
}

/** Sound pieces of an item in each count of a set, the newest count first. */
async function benchCounts(
  read: Queries,
  set: { id: string; versionId: string },
  itemId: string,
): Promise<{ at: string; pieces: number }[]> {
  const lines = await read
    .select({ id: configurationLines.id })
    .from(configurationLines)
    .where(and(eq(configurationLines.versionId, set.versionId), eq(configurationLines.itemId, itemId)));
  if (lines.length === 0) return [];
  const rows = await read
    .select({ id: counts.id, at: counts.countedAt, found: countLines.found })
    .from(counts)
    .innerJoin(countLines, eq(countLines.countId, counts.id))
    .where(
      and(
        eq(counts.setId, set.id),
        inArray(
          countLines.lineId,
          lines.map(({ id }) => id),
        ),
      ),
    )
    .orderBy(desc(counts.countedAt));
  const byCount = new Map<string, { at: string; pieces: number }>();
  for (const { id, at, found } of rows) {
    const kept = byCount.get(id) ?? { at, pieces: 0 };
    kept.pieces += found;
    byCount.set(id, kept);
  }
  return [...byCount.values()];
}
