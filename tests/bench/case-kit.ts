import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { highsSolver } from '@/app/_server/solver/highs';
import { type Database, openDatabase } from '@/db/client';
import { migrate } from '@/db/migrate';
import { previewKit } from '@/db/queries/caseKit';
import { listCases, listPlanVersions } from '@/db/queries/cases';
import type { Construct } from '@/lib/plans/plan';
import { plainDate } from '@/lib/quantities/plainDate';
import { loadDemo } from '@/seed/load';
import { type BenchRow, besideOf, percentiles } from './row';

const BOUND_MS = 150;

/** Requirements, chains and the optimal kit, from the database's rows to the answer; our own bound: 150 ms. */
export async function bench(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'kitwright-bench-'));
  const path = join(folder, 'kit.sqlite');
  migrate(path);
  const db = openDatabase(path);
  try {
    await loadDemo({ db, now: new Date('2026-01-14T06:30:00Z') });
    const plans = await demoPlans(db);
    const large = plans.filter(({ construct }) => construct.plates.length >= 2 && filled(construct) >= 12);
    if (large.length === 0) throw new Error('the demo has no case of two plates and twelve filled holes');
    const plain = await besideOf(() => storeRead(path));
    return [
      await measured('case kit: two plates, twelve holes or more', db, large, 40, plain),
      await measured('case kit: every plan of the demo', db, plans, 3, plain),
    ];
  } finally {
    db.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function demoPlans(db: Database): Promise<{ caseId: string; construct: Construct }[]> {
  const cases = await listCases(db, plainDate.parse('2026-01-01'), plainDate.parse('2026-12-31'));
  const plans: { caseId: string; construct: Construct }[] = [];
  for (const { id } of cases) {
    const version = (await listPlanVersions(db, id)).find(({ status }) => status !== 'superseded');
    if (version) plans.push({ caseId: id, construct: version.construct });
  }
  return plans;
}

const filled = ({ plates }: Construct) =>
  plates.reduce(
    (sum, plate) => sum + Object.values(plate.fills).filter((fill) => fill.purpose !== 'empty').length,
    0,
  );

async function measured(
  name: string,
  db: Database,
  plans: { caseId: string; construct: Construct }[],
  rounds: number,
  plain: number,
): Promise<BenchRow> {
  const times: number[] = [];
  for (let round = 0; round <= rounds; round += 1) {
    for (const { caseId, construct } of plans) {
      // as in the planner: another construct each time, so that nothing is remembered whole
      const asked = { ...construct, note: `round ${round}` };
      const before = performance.now();
      const preview = await previewKit(db, caseId, asked, { solver: highsSolver });
      if (round > 0) times.push(performance.now() - before);
      if (preview?.kit.proof.kind !== 'optimal') throw new Error(`${name}: no proven kit`);
    }
  }
  const { p50, p95 } = percentiles(times);
  const beside = 'reading what is in store by plain SQL';
  return { name: `${name} (${plans.length} plans)`, p50, p95, bound: BOUND_MS, ratio: p50 / plain, beside };
}

/** Every row a kit may rest on, read and no more. */
function storeRead(path: string): void {
  const plain = new Sqlite(path, { readonly: true });
  for (const table of ['items', 'sets', 'set_contents', 'configuration_lines', 'stock', 'fit_rules'])
    plain.prepare(`SELECT * FROM ${table}`).all();
  plain.close();
}
