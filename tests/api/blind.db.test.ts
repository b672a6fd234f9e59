import { sql } from 'drizzle-orm';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import type { Database } from '@/db/client';
import type { DemoPerson } from '@/seed/hospital/people';
import { DEMO_NOW, historyDatabaseFile } from '../setup/database';
import { apiServer } from './server';

beforeAll(() => {
  vi.useFakeTimers({ toFake: ['Date'], now: DEMO_NOW });
});
afterAll(() => {
  vi.useRealTimers();
});

/** Lets somebody check a set blind from now on. */
const checkedBlind = (db: Database, setId: string, person: DemoPerson) =>
  db.tx(async (write) => {
    write.run(sql`INSERT INTO bench_counts (id, set_id, turn_id, version_id, purpose, person_id, base_revision, began_at)
      SELECT 'count_blind', one.id, (SELECT id FROM turns WHERE set_id = one.id ORDER BY number DESC LIMIT 1),
        one.version_id, 'check', ${person}, one.revision, ${DEMO_NOW.toISOString()} FROM sets one WHERE one.id = ${setId}`);
  });

test('whoever counts a set blind reads no cost of the cases it went to, and is told how many are left out', async () => {
  const { db, asPerson } = await apiServer(historyDatabaseFile);
  const [counter, seeing] = [await asPerson('person_wren-adeyemi'), await asPerson('person_tomas-birkett')];
  const costs = (as: typeof counter) => as.done('GET /api/v1/reports/costs', { query: { months: '24' } });
  const before = await costs(counter);
  expect(before.hidden).toBe(0);
  const set = db.read.get<{ id: string; cases: number }>(sql`
    SELECT set_id AS id, count(DISTINCT case_id) AS cases FROM case_picks
      WHERE set_id IS NOT NULL AND issued_at IS NOT NULL GROUP BY set_id ORDER BY cases DESC, set_id LIMIT 1`);
  if (!set) throw new Error('the history has sets that went to cases');
  await checkedBlind(db, set.id, 'person_wren-adeyemi');
  const blind = await costs(counter);
  expect(blind.hidden).toBeGreaterThan(3);
  expect(blind.cases).toBe(before.cases - blind.hidden);
  expect(await costs(seeing)).toEqual(before);
}, 120_000);

test('whoever counts a set blind is told neither what it lacks nor what it weighs where it could serve an emergency', async () => {
  const { db, asPerson } = await apiServer();
  const [counter, seeing] = [await asPerson('person_wren-adeyemi'), await asPerson('person_tomas-birkett')];
  const told = async (as: typeof counter) =>
    (await as.done('GET /api/v1/emergency/answer', {})).sets.find(({ code }) => code === 'SFL-02');
  const before = await told(counter);
  expect(before?.massGrams).toBeGreaterThan(1000);
  await checkedBlind(db, before?.id ?? '', 'person_wren-adeyemi');
  expect(await told(counter)).toMatchObject({ massGrams: null, short: null, builds: null, lacks: [] });
  expect(await told(seeing)).toEqual(before);
}, 120_000);
