import { type SQL, sql } from 'drizzle-orm';
import { indicatorKind, indicatorResult, loadState } from '@/lib/loads/load';
import {
  type FailureOf,
  type LoadInLine,
  speaksForSteriliser,
  type Touched,
  touchedBy,
} from '@/lib/loads/touched';
import type { Queries } from '../../client';

/** Few loads lie between two accepted ones; more are read on as they are needed. */
const PAGE = 12;

const COLUMNS = sql`load.id, load.number, load.state, load.started_at AS startedAt,
  load.exception IS NOT NULL AS byException,
  (SELECT json_group_array(json_object('kind', part.kind, 'result', part.result))
    FROM load_indicators part INDEXED BY load_indicators_by_load WHERE part.load_id = load.id) AS indicators`;

/** A load by itself, with the steriliser it ran in. */
export const loadAsked = (loadId: string): SQL =>
  sql`SELECT load.steriliser_id AS steriliserId, ${COLUMNS} FROM loads load WHERE load.id = ${loadId}`;

interface Moment {
  startedAt: string;
  number: string;
}

/** What a steriliser ran next before, or after, a moment: a page, the nearest first. */
export const loadsBeside = (
  steriliserId: string,
  { startedAt, number }: Moment,
  way: 'before' | 'after',
): SQL =>
  way === 'before'
    ? sql`SELECT ${COLUMNS} FROM loads load INDEXED BY loads_by_steriliser
        WHERE load.steriliser_id = ${steriliserId} AND (load.started_at, load.number) < (${startedAt}, ${number})
        ORDER BY load.started_at DESC, load.number DESC LIMIT ${PAGE}`
    : sql`SELECT ${COLUMNS} FROM loads load INDEXED BY loads_by_steriliser
        WHERE load.steriliser_id = ${steriliserId} AND (load.started_at, load.number) > (${startedAt}, ${number})
        ORDER BY load.started_at, load.number LIMIT ${PAGE}`;

/**
 * The loads in doubt if a load failed, read outwards from it until one on either side speaks for the steriliser: what the
 * machine ran long before or after is not read. `null` where there is no such load, or it never ran.
 */
export function loadsInDoubt(read: Queries, loadId: string): Touched | null {
  const [asked] = read.all(loadAsked(loadId)) as (Row & { steriliserId: string })[];
  if (!asked || asked.startedAt === null) return null;
  const own = loadOf(asked);
  const failure: FailureOf = own.indicators.some(
    ({ kind, result }) => kind === 'biological' && result === 'failed',
  )
    ? 'biological'
    : 'other';
  const line = [
    ...untilOneSpeaks(read, asked.steriliserId, own, 'before', failure),
    own,
    ...untilOneSpeaks(read, asked.steriliserId, own, 'after', failure),
  ];
  return touchedBy(line, loadId, failure);
}

function untilOneSpeaks(
  read: Queries,
  steriliserId: string,
  from: LoadInLine,
  way: 'before' | 'after',
  failure: FailureOf,
): LoadInLine[] {
  const found: LoadInLine[] = [];
  let last = from;
  for (;;) {
    const page = (read.all(loadsBeside(steriliserId, last, way)) as Row[]).map(loadOf);
    found.push(...page);
    const end = page.at(-1);
    if (!end || page.length < PAGE || page.some((load) => speaksForSteriliser(load, failure))) return found;
    last = end;
  }
}

interface Row {
  id: string;
  number: string;
  state: string;
  startedAt: string | null;
  byException: number;
  indicators: string;
}

const loadOf = ({ id, number, state, startedAt, byException, indicators }: Row): LoadInLine => ({
  id,
  number,
  state: loadState.parse(state),
  startedAt: startedAt ?? '',
  byException: byException === 1,
  indicators: (JSON.parse(indicators) as { kind: string; result: string }[]).map(({ kind, result }) => ({
    kind: indicatorKind.parse(kind),
    result: indicatorResult.parse(result),
  })),
});
