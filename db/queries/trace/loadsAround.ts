import { and, asc, desc, eq, gt, inArray, isNotNull, lt, or, type SQL } from 'drizzle-orm';
import { groupBy } from '@/lib/lists/groupBy';
import { indicatorKind, indicatorResult, loadState } from '@/lib/loads/load';
import {
  type FailureOf,
  type LoadInLine,
  speaksForSteriliser,
  type Touched,
  touchedBy,
} from '@/lib/loads/touched';
import type { Queries } from '../../client';
import { loadIndicators, loads } from '../../schema';

/** Few loads lie between two accepted ones; more are read on as they are needed. */
const PAGE = 12;

/**
 * The loads in doubt if a load failed, read outwards from it until one on either side speaks for the steriliser: what the
 * machine ran long before or after is not read. `null` where there is no such load, or it never ran.
 */
export async function loadsInDoubt(read: Queries, loadId: string): Promise<Touched | null> {
  const [asked] = await read.select().from(loads).where(eq(loads.id, loadId));
  if (!asked || asked.startedAt === null) return null;
  const [own] = await inLine(read, [asked]);
  if (!own) return null;
  const failure: FailureOf = own.indicators.some(
    ({ kind, result }) => kind === 'biological' && result === 'failed',
  )
    ? 'biological'
    : 'other';
  const line = [
    ...(await untilOneSpeaks(read, asked.steriliserId, own, 'before', failure)),
    own,
    ...(await untilOneSpeaks(read, asked.steriliserId, own, 'after', failure)),
  ];
  return touchedBy(line, loadId, failure);
}

async function untilOneSpeaks(
  read: Queries,
  steriliserId: string,
  from: LoadInLine,
  way: 'before' | 'after',
  failure: FailureOf,
): Promise<LoadInLine[]> {
  const found: LoadInLine[] = [];
  let last = from;
  for (;;) {
    const beyond: SQL | undefined =
      way === 'before'
        ? or(
            lt(loads.startedAt, last.startedAt),
            and(eq(loads.startedAt, last.startedAt), lt(loads.number, last.number)),
          )
        : or(
            gt(loads.startedAt, last.startedAt),
            and(eq(loads.startedAt, last.startedAt), gt(loads.number, last.number)),
          );
    const order = way === 'before' ? desc : asc;
    const rows = await read
      .select()
      .from(loads)
      .where(and(eq(loads.steriliserId, steriliserId), isNotNull(loads.startedAt), beyond))
      .orderBy(order(loads.startedAt), order(loads.number))
      .limit(PAGE);
    const page = await inLine(read, rows);
    found.push(...page);
    const end = page.at(-1);
    if (!end || page.length < PAGE || page.some((load) => speaksForSteriliser(load, failure))) return found;
    last = end;
  }
}

async function inLine(read: Queries, rows: readonly (typeof loads.$inferSelect)[]): Promise<LoadInLine[]> {
  if (rows.length === 0) return [];
  const indicators = await read
    .select()
    .from(loadIndicators)
    .where(
      inArray(
        loadIndicators.loadId,
        rows.map(({ id }) => id),
      ),
    );
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
