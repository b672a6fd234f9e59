import { sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { AFTER_STAGE, MOST_TURNS } from '@/lib/turns/stageTimes';
import { demoDatabase, historyDatabase } from '../../setup/database';

const COLUMNS = sql.raw('configuration_id, stage, seq, began_at, ended_at');
const astray = (db: Database) => [
  ...db.read.all(sql`SELECT ${COLUMNS} FROM stage_ends EXCEPT SELECT * FROM stage_ends_worked_out`),
  ...db.read.all(sql`SELECT * FROM stage_ends_worked_out EXCEPT SELECT ${COLUMNS} FROM stage_ends`),
];

it('the ends of stages that are kept are those of the steps themselves, the latest of each kind and stage', async () => {
  const db = await historyDatabase();
  expect(astray(db)).toEqual([]);
  const most = db.read.all<{ n: number }>(
    sql`SELECT count(*) AS n FROM stage_ends GROUP BY configuration_id, stage ORDER BY n DESC LIMIT 1`,
  );
  expect(most).toEqual([{ n: MOST_TURNS }]);
});

it('the stages of the database are those of the program', async () => {
  const db = await demoDatabase();
  const rows = db.read.all<{ stage: string; step: string }>(sql`SELECT stage, step FROM stage_after`);
  expect(Object.fromEntries(rows.map(({ stage, step }) => [stage, step]))).toEqual(AFTER_STAGE);
});

it('how often each set was sterilised is kept as its steps are, one by one', async () => {
  const db = await historyDatabase();
  const kept = () => db.read.all(sql`SELECT set_id, cycles FROM set_cycles ORDER BY set_id`);
  const workedOut = () => db.read.all(sql`SELECT set_id, cycles FROM set_cycles_worked_out ORDER BY set_id`);
  expect(kept().length).toBeGreaterThan(10);
  expect(kept()).toEqual(workedOut());
  // and with no index in between
  const counted = db.read.all(
    sql`SELECT set_id, sum(step = 'inSteriliser') AS cycles FROM turn_steps GROUP BY set_id HAVING cycles > 0 ORDER BY set_id`,
  );
  expect(kept()).toEqual(counted);
});
