import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { openDatabase } from '@/db/client';
import { migrate } from '@/db/migrate';
import { usedInYear } from '@/db/queries/shelf/usedInYear';
import { loadsInDoubt } from '@/db/queries/trace/loadsAround';
import { traceLot } from '@/db/queries/trace/lot';
import { recallReach } from '@/db/queries/trace/reach';
import { loadId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import type { BenchRow } from './row';
import { makeHospital } from './years/makeHospital';
import { TEN_YEARS } from './years/size';

const ASKED = 200;
/** Asked before any is counted, so that what is measured is compiled. */
const WARM = 20;
const TODAY = plainDate.parse('2026-01-14');
/** `YEARS=1,10` measures a year and ten side by side; a quarter of a year and one unless told: ten take a quarter of an hour to make. */
const YEARS = (process.env.YEARS ?? '0.25,1').split(',').map(Number);

/**
 * A hospital that was given a present (`pages/today`) has other items in some lines of its sets than those its record speaks of,
 * which no hospital has: lots of the items that lie where the record says are asked for.
 */
const LIES_AS_RECORDED = `NOT EXISTS (SELECT 1 FROM piece_moves move INDEXED BY piece_moves_by_lot
  JOIN sets ON sets.id = move.to_set_id
  WHERE move.lot = came.lot AND move.item_id = came.item_id AND NOT EXISTS (SELECT 1 FROM configuration_lines line
    WHERE line.version_id = sets.version_id AND line.item_id = move.item_id))`;

/** What came into the slots of a lot and left them since it first came into each: read by the engine alone. */
const MOVES_COUNTED = `WITH slot AS MATERIALIZED (SELECT to_set_id AS set_id, min(done_at) AS at
    FROM piece_moves INDEXED BY piece_moves_by_lot WHERE lot = ? AND item_id = ? AND to_set_id IS NOT NULL GROUP BY 1)
  SELECT sum(quantity), count(case_id), max(seq) FROM (
    SELECT quantity, NULL AS case_id, seq FROM slot CROSS JOIN piece_moves INDEXED BY piece_moves_into_slot
      WHERE to_set_id = slot.set_id AND item_id = ? AND done_at >= slot.at
    UNION ALL
    SELECT quantity, case_id, seq FROM slot CROSS JOIN piece_moves INDEXED BY piece_moves_out_of_slot
      WHERE from_set_id = slot.set_id AND item_id = ? AND done_at >= slot.at)`;

const WHAT = {
  lot: { name: 'recall by lot', bound: 20 },
  answer: { name: 'recall by lot, for each hundred cases in the answer', bound: null },
  plain: { name: 'a plain count of the moves it reads', bound: null },
  load: { name: 'recall by load', bound: 5 },
  reach: { name: 'what a load reaches', bound: null },
  usage: { name: 'usage of every item over twelve months', bound: 25 },
} as const;

/**
 * Recalls in hospitals of different ages, side by side: what is read grows with the answer, not with the record. The answer of
 * a lot that lay mixed in slots which never were empty since grows with its age, as any later case may have had some; so each
 * age is shown with the cases of its median answer, and by the hundred cases too.
 */
export async function bench(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  const first = new Map<string, number>();
  for (const years of YEARS) {
    const path = hospitalOf(years);
    const db = openDatabase(path);
    const raw = new Sqlite(path, { readonly: true });
    const lots = raw
      .prepare<[], { item: string; lot: string }>(
        `SELECT came.item_id AS item, came.lot FROM piece_moves came WHERE came.act = 'received' AND ${LIES_AS_RECORDED}
          ORDER BY random() LIMIT ${ASKED + WARM}`,
      )
      .all();
    const loads = raw
      .prepare<[], string>(`SELECT id FROM loads ORDER BY random() LIMIT ${ASKED + WARM}`)
      .pluck()
      .all()
      .map((id) => loadId.parse(id));
    const count = raw.prepare<[string, string, string, string]>(MOVES_COUNTED);
    // how many cases it has is kept of each answer: a server lets the rest go too
    const traced = await timed(
      lots,
      async ({ item, lot }) => (await traceLot(db, item, lot))?.cases.counts.total ?? 0,
    );
    const cases = traced.map(({ answer }) => answer);
    const measured: Record<keyof typeof WHAT, readonly number[]> = {
      lot: traced.map(({ ms }) => ms),
      answer: traced.flatMap(({ ms, answer: size }) => (size === 0 ? [] : [(ms * 100) / size])),
      plain: (await timed(lots, ({ item, lot }) => count.get(lot, item, item, item))).map(({ ms }) => ms),
      load: (await timed(loads, (id) => loadsInDoubt(db.read, id))).map(({ ms }) => ms),
      reach: (await timed(loads, (id) => recallReach(db.read, { kind: 'load', loadId: id }))).map(
        ({ ms }) => ms,
      ),
      usage: (await timed([...Array(WARM + 30).keys()], () => usedInYear(db.read, TODAY))).map(
        ({ ms }) => ms,
      ),
    };
    for (const what of Object.keys(WHAT) as (keyof typeof WHAT)[]) {
      const { name, bound } = WHAT[what];
      const p50 = at(measured[what], 0.5);
      if (!first.has(what)) first.set(what, p50);
      rows.push({
        name: `${name}, ${years} years${what === 'lot' ? ` (${at(cases, 0.5)} cases, p95 ${at(cases, 0.95)})` : ''}`,
        p50,
        p95: at(measured[what], 0.95),
        bound,
        ratio: p50 / (first.get(what) ?? p50),
      });
    }
    raw.close();
    db.close();
  }
  return rows;
}

/** Made once and kept: `var/bench` may be deleted at any time. */
function hospitalOf(years: number): string {
  const path = join('var', 'bench', `${years}-years.sqlite`);
  if (existsSync(path)) {
    // made before the schema last changed; asked first, as migrating looks through every row for ones that point at nothing
    if (isBehind(path)) migrate(path);
    return path;
  }
  for (const end of ['', '-wal', '-shm']) rmSync(path + end, { force: true });
  mkdirSync(join('var', 'bench'), { recursive: true });
  makeHospital(path, { ...TEN_YEARS, years }, (line) => console.error(line));
  return path;
}

function isBehind(path: string): boolean {
  const raw = new Sqlite(path, { readonly: true });
  try {
    const applied = new Set(raw.prepare<[], string>('SELECT name FROM migrations').pluck().all());
    return readdirSync(join('db', 'migrations')).some((name) => name.endsWith('.sql') && !applied.has(name));
  } finally {
    raw.close();
  }
}

/** `CLOCK=processor` counts this process's own time, on a machine that does other things too; reading from the disk is not in it. */
const elapsed = (): number => {
  if (process.env.CLOCK !== 'processor') return performance.now();
  const { user, system } = process.cpuUsage();
  return (user + system) / 1_000;
};

async function timed<T, A>(
  asked: readonly T[],
  ask: (one: T) => A | Promise<A>,
): Promise<{ ms: number; answer: A }[]> {
  const took: { ms: number; answer: A }[] = [];
  for (const one of asked) {
    const began = elapsed();
    const answer = await ask(one);
    took.push({ ms: elapsed() - began, answer });
  }
  return took.slice(WARM);
}

function at(figures: readonly number[], share: number): number {
  const sorted = [...figures].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}
