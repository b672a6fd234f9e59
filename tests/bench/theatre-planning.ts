import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { eq, sql } from 'drizzle-orm';
import { highsSolver } from '@/app/_server/solver/highs';
import { type Database, openDatabase } from '@/db/client';
import { migrate } from '@/db/migrate';
import { keepPlan } from '@/db/operations/theatre/keep-plan';
import { moveCase } from '@/db/operations/theatre/move-case';
import type { RoundTimes } from '@/db/operations/theatre/promises';
import { listPeople, type Person } from '@/db/queries/people';
import { planningFacts } from '@/db/queries/theatre/planningFacts';
import { loadStageTimes } from '@/db/queries/turns/stageTimes';
import { cases, setContents } from '@/db/schema';
import { setTurnaroundInput } from '@/lib/calculations/setTurnaround/schema';
import { setTurnaround } from '@/lib/calculations/setTurnaround/setTurnaround';
import { caseId, type NewId } from '@/lib/identity/ids';
import { setsByCase } from '@/lib/theatre/planning/setsByCase';
import { turnaroundInput } from '@/lib/theatre/planning/turnaroundInput';
import { STAGES } from '@/lib/turns/stageTimes';
import { loadDemo } from '@/seed/load';
import { busyDay } from '../fixtures/busyDay';
import { type BenchRow, percentiles } from './row';

const NOW = '2026-01-14T20:00:00.000Z';
const RUNS = 120;
const MINUTE_MS = 60_000;

/**
 * A day of 40 cases over 40 sets, no two plans alike, re-planned end to end: rows read, ways worked out, sets given by the
 * solver, promises written. Before each run a case has moved, and every third time a set holds another count. Our own bound,
 * for both: 300 ms. The first row is the very first plan of a process, before anything is at hand.
 */
export async function bench(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-planning-'));
  const path = join(folder, 'demo.sqlite');
  migrate(path);
  const db = openDatabase(path);
  try {
    await loadDemo({ db, now: new Date('2026-01-14T06:30:00Z') });
    const ids = await busyDay(db, { cases: 40, sets: 40 });
    const manager = (await listPeople(db)).find(({ role }) => role === 'theatreManager') as Person;
    const first = await replan(db, manager);
    const times: { list: number[]; store: number[] } = { list: [], store: [] };
    for (let run = 0; run < RUNS; run += 1) {
      await change(db, manager, ids, run);
      times[isOfStore(run) ? 'store' : 'list'].push(await replan(db, manager));
    }
    const row = (what: string, measured: number[]): BenchRow => {
      const { p50, p95 } = percentiles(measured);
      const name = `theatre planning: 40 cases × 40 sets re-planned after ${what}, facts to promises`;
      return { name, p50, p95, bound: 300 };
    };
    return [
      { name: 'theatre planning: 40 cases × 40 sets, the first time', p50: first, p95: first, bound: null },
      row('a case moved', times.list),
      row('a case moved and a set’s contents changed', times.store),
    ];
  } finally {
    db.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function replan(db: Database, person: Person): Promise<number> {
  const began = performance.now();
  const facts = await planningFacts(db, NOW);
  const input = setTurnaroundInput.parse({ ...turnaroundInput(facts), repairsFor: [] });
  const said = await setTurnaround(input, { solver: highsSolver });
  const answer = said.outcome === 'answered' ? said.answer : said.known;
  if (answer?.proof.kind !== 'optimal') throw new Error('the plan was not proven');
  const kept = await keepPlan({
    db,
    now: NOW,
    newId,
    person,
    plan: setsByCase(facts, answer),
    madeFrom: new Set(facts.promises.map(({ id }) => id)),
    round: await roundTimes(db),
  });
  if (!kept.ok) throw new Error(kept.refusal.problems.map(({ message }) => message).join(' '));
  return performance.now() - began;
}

const isOfStore = (run: number): boolean => run % 3 === 0;

/** A case starts two minutes later or, the next time round, as before; now and then a piece is gone or there again. */
async function change(db: Database, person: Person, ids: readonly string[], run: number): Promise<void> {
  const id = ids[(run * 7) % ids.length] as string;
  const [row] = await db.read.select().from(cases).where(eq(cases.id, id));
  if (!row) throw new Error('the case is gone');
  const by = (run % 80 < 40 ? 2 : -2) * MINUTE_MS;
  const shifted = (at: string) => new Date(Date.parse(at) + by).toISOString();
  const moved = await moveCase({
    db,
    now: NOW,
    newId,
    person,
    caseId: caseId.parse(id),
    baseRevision: row.revision,
    theatreId: row.theatreId,
    startsAt: shifted(row.startsAt),
    endsAt: shifted(row.endsAt),
    round: await roundTimes(db),
  });
  if (!moved.ok) throw new Error(moved.refusal.problems.map(({ message }) => message).join(' '));
  if (!isOfStore(run)) return;
  await db.tx((write) =>
    write
      .update(setContents)
      .set({ found: run % 2 === 0 ? sql`max(0, ${setContents.found} - 1)` : sql`${setContents.found} + 1` })
      .where(
        sql`${setContents.lineId} IN (SELECT line_id FROM set_contents ORDER BY set_id, line_id LIMIT 3 OFFSET ${(run % 10) * 40})`,
      ),
  );
}

/** As the program has them: what the stages of a turn usually take. */
async function roundTimes(db: Database): Promise<RoundTimes> {
  const timeOf = await loadStageTimes(db);
  return {
    leadMinutes: 60,
    roundMinutes: (kind) => STAGES.reduce((sum, stage) => sum + timeOf(kind, stage).minutes, 0),
  };
}

let made = 0;
const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_bench-${made}`;
};
