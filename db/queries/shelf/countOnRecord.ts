import { asc, eq, inArray } from 'drizzle-orm';
import { groupBy } from '@/lib/lists/groupBy';
import { differenceOf, type StockCountStage, stageOfCount, standingFigure } from '@/lib/stock/stockCount';
import type { Queries } from '../../client';
import { stockCountFigures, stockCountLines, stockCounts } from '../../schema';

export type CountRow = typeof stockCounts.$inferSelect;
export type CountLineRow = typeof stockCountLines.$inferSelect;
type FigureRow = Omit<typeof stockCountFigures.$inferSelect, 'round'> & { round: 1 | 2 };

export interface CountedLine {
  row: CountLineRow;
  /** In the order they were given. */
  figures: FigureRow[];
  /** The figure that counts, and how far it is from the record of its moment; `null` before one is given. */
  standing: FigureRow | null;
  difference: number | null;
}

export interface CountOnRecord {
  count: CountRow;
  lines: CountedLine[];
  stage: StockCountStage;
}

/** Counts of the shelves with their lines and figures, inside or outside a write; unknown ids are left out. */
export async function countsOnRecord(read: Queries, ids: readonly string[]): Promise<CountOnRecord[]> {
  if (ids.length === 0) return [];
  const [counts, rows] = await Promise.all([
    read
      .select()
      .from(stockCounts)
      .where(inArray(stockCounts.id, [...ids])),
    read
      .select({ line: stockCountLines, figure: stockCountFigures })
      .from(stockCountLines)
      .leftJoin(stockCountFigures, eq(stockCountFigures.lineId, stockCountLines.id))
      .where(inArray(stockCountLines.countId, [...ids]))
      .orderBy(asc(stockCountLines.id), asc(stockCountFigures.seq)),
  ]);
  const byLine = groupBy(rows, ({ line }) => line.id);
  const lines = [...byLine.values()].flatMap((own): CountedLine[] => {
    const row = own[0]?.line;
    if (!row) return [];
    const figures = own.flatMap(({ figure }) =>
      figure === null ? [] : [{ ...figure, round: figure.round === 2 ? (2 as const) : (1 as const) }],
    );
    const standing = standingFigure(figures);
    return [{ row, figures, standing, difference: standing && differenceOf(standing) }];
  });
  const byCount = groupBy(lines, ({ row }) => row.countId);
  return counts.map((count) => {
    const own = byCount.get(count.id) ?? [];
    const facts = own.map(({ row, difference }) => ({
      recount: row.recount,
      difference,
      decision: row.decision,
    }));
    return { count, lines: own, stage: stageOfCount({ ...count, lines: facts }) };
  });
}

export async function countOnRecord(read: Queries, id: string): Promise<CountOnRecord | null> {
  return (await countsOnRecord(read, [id]))[0] ?? null;
}
