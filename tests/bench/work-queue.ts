import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { openDatabase } from '@/db/client';
import { migrate } from '@/db/migrate';
import { loadWorkQueue } from '@/db/queries/turns/workQueue';
import { loadDemo } from '@/seed/load';
import { type BenchRow, besideOf, percentiles } from './row';

const RUNS = 40;
const TABLES = ['sets', 'set_contents', 'configuration_lines', 'set_promises', 'cases', 'loads', 'packs'];

/** What to do next with each of the demo's 54 sets, as the screen asks for it: the first time, and from then on. */
export async function bench(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-queue-'));
  try {
    const path = join(folder, 'demo.sqlite');
    migrate(path);
    const now = new Date('2026-01-14T06:30:00Z');
    const made = openDatabase(path);
    await loadDemo({ db: made, now });
    made.close();
    const warm: number[] = [];
    copyFileSync(path, join(folder, 'read.sqlite'));
    const db = openDatabase(join(folder, 'read.sqlite'));
    for (let run = 0; run < RUNS; run += 1) {
      const began = performance.now();
      await loadWorkQueue(db, now.toISOString());
      warm.push(performance.now() - began);
    }
    db.close();
    const [first = Number.NaN, ...rest] = warm;
    const { p50, p95 } = percentiles(rest);
    const plain = new Sqlite(path, { readonly: true });
    const ratio =
      p50 /
      (await besideOf(() => {
        for (const table of TABLES) plain.prepare(`SELECT * FROM ${table}`).all();
      }));
    plain.close();
    const beside = 'the same tables read by plain SQL';
    return [
      { name: 'work queue, 54 sets, first time', p50: first, p95: first, bound: null },
      { name: 'work queue, 54 sets', p50, p95, bound: 100, ratio, beside },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
