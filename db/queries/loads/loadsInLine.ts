import { and, asc, eq, inArray, isNotNull } from 'drizzle-orm';
import { groupBy } from '@/lib/lists/groupBy';
import { indicatorKind, indicatorResult, loadState } from '@/lib/loads/load';
import type { LoadInLine } from '@/lib/loads/touched';
import type { Queries } from '../../client';
import { loadIndicators, loads } from '../../schema';

/** Every load a steriliser ran, oldest first, with what speaks for it. Inside or outside a write. */
export async function loadsInLine(read: Queries, steriliserId: string): Promise<LoadInLine[]> {
  const rows = await read
    .select()
    .from(loads)
    .where(and(eq(loads.steriliserId, steriliserId), isNotNull(loads.startedAt)))
    .orderBy(asc(loads.startedAt), asc(loads.number));
  const ids = rows.map(({ id }) => id);
  const indicators =
    ids.length === 0
      ? []
      : await read.select().from(loadIndicators).where(inArray(loadIndicators.loadId, ids));
  const ofLoad = groupBy(indicators, ({ loadId }) => loadId);
  return rows.map(({ id, number, state, startedAt, exception }) => ({
    id,
    number,
    state: loadState.parse(state),
    startedAt: startedAt ?? '',
    byException: exception !== null,
    indicators: (ofLoad.get(id) ?? []).map(({ kind, result }) => ({
      kind: indicatorKind.parse(kind),
      result: indicatorResult.parse(result),
    })),
  }));
}
