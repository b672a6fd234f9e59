import { and, eq, isNotNull, isNull, or } from 'drizzle-orm';
import type { Queries } from '../../client';
import { type Reading, THE_PROGRAM } from '../../reader';
import { stockCountLines, stockCounts } from '../../schema';

/** Heaps that this person counts now, or counts again, and whose figure they may not see until they have finished. */
export async function heapsCountedBy(read: Queries, personId: string): Promise<ReadonlySet<string>> {
  const rows = await read
    .select({ stockId: stockCountLines.stockId })
    .from(stockCountLines)
    .innerJoin(stockCounts, eq(stockCounts.id, stockCountLines.countId))
    .where(
      and(
        isNotNull(stockCountLines.stockId),
        or(
          and(
            eq(stockCounts.begunBy, personId),
            isNull(stockCounts.closedAt),
            isNull(stockCounts.abandonedAt),
          ),
          and(
            eq(stockCounts.recountBy, personId),
            isNull(stockCounts.recountClosedAt),
            eq(stockCountLines.recount, true),
          ),
        ),
      ),
    );
  return new Set(rows.map(({ stockId }) => stockId ?? ''));
}

/** The same for whoever reads a screen. */
export async function heapsHiddenFrom({ read, reader }: Reading): Promise<ReadonlySet<string>> {
  return reader === THE_PROGRAM ? new Set() : heapsCountedBy(read, reader.id);
}
