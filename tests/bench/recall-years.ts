import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { openDatabase } from '@/db/client';
import { usedInYear } from '@/db/queries/shelf/usedInYear';
import { loadsInDoubt } from '@/db/queries/trace/loadsAround';
import { traceLot } from '@/db/queries/trace/lot';
import { plainDate } from '@/lib/quantities/plainDate';
import type { BenchRow } from './run';
import { makeHospital } from './years/makeHospital';
import { TEN_YEARS } from './years/size';

const ASKED = 200;
const TODAY = plainDate.parse('2026-01-14');
/** `YEARS=1,10` measures a year and ten side by side; a quarter of a year and one unless told: ten take a quarter of an hour to make. */
const YEARS = (process.env.YEARS ?? '0.25,1').split(',').map(Number);

/** Recalls in hospitals of different ages, side by side: what is read grows with the answer, not with the record. */
export async function bench(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  const first: Record<string, number> = {};
  for (const years of YEARS) {
    const path = hospitalOf(years);
    const db = openDatabase(path);
    const raw = new Sqlite(path, { readonly: true });
    const lots = raw
      .prepare<[], { item: string; lot: string }>(
        `SELECT item_id AS item, lot FROM piece_moves WHERE act = 'received' ORDER BY random() LIMIT ${ASKED}`,
      )
      .all();
    const loads = raw
      .prepare<[], string>(`SELECT id FROM loads ORDER BY random() LIMIT ${ASKED}`)
      .pluck()
      .all();
    raw.close();
    const measured = {
      'recall by lot': await timed(lots, ({ item, lot }) => traceLot(db, item, lot)),
      'recall by load': await timed(loads, (id) => loadsInDoubt(db.read, id)),
      'usage of every item over twelve months': await timed([...Array(30).keys()], () =>
        usedInYear(db.read, TODAY),
      ),
    };
    for (const [what, { p50, p95 }] of Object.entries(measured)) {
      first[what] ??= p50;
      rows.push({
        name: `${what}, ${years} years`,
        p50,
        p95,
        bound: BOUND[what] ?? null,
        ratio: p50 / (first[what] ?? p50),
      });
    }
    db.close();
  }
  return rows;
}

const BOUND: Record<string, number> = {
  'recall by lot': 20,
  'recall by load': 5,
  'usage of every item over twelve months': 25,
};

/** Made once and kept: `var/bench` may be deleted at any time. */
function hospitalOf(years: number): string {
  const path = join('var', 'bench', `${years}-years.sqlite`);
  if (existsSync(path)) return path;
  for (const end of ['', '-wal', '-shm']) rmSync(path + end, { force: true });
  mkdirSync(join('var', 'bench'), { recursive: true });
  makeHospital(path, { ...TEN_YEARS, years }, (line) => console.error(line));
  return path;
}

async function timed<T>(
  asked: readonly T[],
  ask: (one: T) => unknown,
): Promise<{ p50: number; p95: number }> {
  const took: number[] = [];
  for (const one of asked) {
    const began = performance.now();
    await ask(one);
    took.push(performance.now() - began);
  }
  took.sort((a, b) => a - b);
  const at = (share: number) =>
    took[Math.min(took.length - 1, Math.floor(took.length * share))] ?? Number.NaN;
  return { p50: at(0.5), p95: at(0.95) };
}
