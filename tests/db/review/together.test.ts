import { type SQL, sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { loadTogether, setsOfCases } from '@/db/queries/review/together';
import { THE_PROGRAM } from '@/db/reader';
import { plainDate } from '@/lib/quantities/plainDate';
import { historyDatabase } from '../../setup/database';

const NOW = '2026-01-14T08:00:00.000Z';
const PERIOD = { from: plainDate.parse('2025-01-14'), until: plainDate.parse('2026-01-14') };

const reading = (db: Database) => ({ read: db.read, reader: THE_PROGRAM }) as const;
const stepsOf = (db: Database, query: SQL) =>
  (db.read.all(sql`EXPLAIN QUERY PLAN ${query}`) as { detail: string }[]).map(({ detail }) => detail);

/** The newest cases of a configuration that are over, with a set of another sent to each. */
async function sendBeside(db: Database, cases: number): Promise<{ own: string; other: string }> {
  const [pair] = db.read.all<{ own: string; other: string; set_id: string }>(sql`
    SELECT a.configuration_id AS own, b.configuration_id AS other, sets.id AS set_id
    FROM configuration_versions a JOIN configuration_versions b JOIN sets ON sets.version_id = b.id
    WHERE a.configuration_id = 'configuration_drt' AND b.configuration_id <> a.configuration_id
      AND NOT EXISTS (SELECT 1 FROM piece_moves WHERE from_set_id = sets.id AND case_id IS NOT NULL)
    ORDER BY sets.id LIMIT 1`);
  if (!pair) throw new Error('the demo has a set that no case took pieces of');
  await db.tx(async (write) => {
    await write.run(sql`
      INSERT INTO case_picks (id, case_id, set_id, quantity, how, picked_by, done_at, entered_at, issued_by, issued_at)
      SELECT 'pick_beside-' || row_number() OVER (), one.id, set_id, 1, 'sent', 'person_ruth-okonjo', one.starts_at, one.starts_at,
        'person_ruth-okonjo', one.starts_at
      FROM (SELECT DISTINCT cases.id, cases.starts_at FROM cases JOIN piece_moves ON piece_moves.case_id = cases.id
        JOIN sets ON sets.id = from_set_id JOIN configuration_versions version ON version.id = sets.version_id
        WHERE version.configuration_id = ${pair.own} AND cases.ends_at < ${NOW}
          AND cases.case_date BETWEEN ${PERIOD.from} AND ${PERIOD.until}
          -- a pick beside pieces alone would stand for all of the case's sets
          ORDER BY cases.starts_at DESC LIMIT ${cases}) one, (SELECT ${pair.set_id} AS set_id)`);
    await write.run(sql`
      INSERT INTO case_picks (id, case_id, set_id, quantity, how, picked_by, done_at, entered_at, issued_by, issued_at)
      SELECT DISTINCT 'pick_own-' || pick.id, pick.case_id, move.from_set_id, 1, 'sent', 'person_ruth-okonjo', pick.done_at,
        pick.done_at, 'person_ruth-okonjo', pick.done_at
      FROM case_picks pick JOIN piece_moves move ON move.case_id = pick.case_id AND move.from_set_id IS NOT NULL
      WHERE pick.id GLOB 'pick_beside-*' GROUP BY pick.id`);
  });
  return pair;
}

describe('configurations opened together', () => {
  it('are counted as by hand: by case, over picks, and over pieces where nobody picked', async () => {
    const db = await historyDatabase();
    const { own, other } = await sendBeside(db, 15);
    const { pairs } = await loadTogether(reading(db), own, PERIOD, NOW);
    const pair = pairs.find(({ otherId }) => otherId === other);
    // told again in another way than the queries under test tell it
    const there = db.read.all<{ case_id: string; configuration_id: string }>(sql`
      SELECT DISTINCT both.case_id, version.configuration_id FROM (
        SELECT case_id, set_id FROM case_picks WHERE issued_at IS NOT NULL
        UNION SELECT case_id, from_set_id FROM piece_moves WHERE from_set_id IS NOT NULL) both
      JOIN cases ON cases.id = both.case_id JOIN sets ON sets.id = both.set_id
      JOIN configuration_versions version ON version.id = sets.version_id
      WHERE case_date BETWEEN ${PERIOD.from} AND ${PERIOD.until} AND ends_at < ${NOW} AND cancelled_at IS NULL`);
    const casesOf = (id: string) =>
      new Set(there.filter((one) => one.configuration_id === id).map(({ case_id }) => case_id));
    expect(pair).toMatchObject({
      all: new Set(there.map(({ case_id }) => case_id)).size,
      own: casesOf(own).size,
      other: casesOf(other).size,
      both: 15,
      verdict: 'oftener',
    });
    // from the other side the pair is the same
    const turned = (await loadTogether(reading(db), other, PERIOD, NOW)).pairs.find(
      ({ otherId }) => otherId === own,
    );
    expect(turned?.chance).toBeCloseTo(pair?.chance ?? 1, 12);
    expect(turned?.lift).toBeCloseTo(pair?.lift ?? 0, 12);
  });

  it('reads the cases of the time by when they began, and each by its own index', async () => {
    const db = await historyDatabase();
    for (const query of setsOfCases(PERIOD, NOW)) {
      const steps = stepsOf(db, query);
      expect(steps.join('\n')).toMatch(/SEARCH cases USING INDEX cases_by_start/);
      expect(steps.filter((step) => step.startsWith('SCAN')).join()).toBe('');
      expect(steps.filter((step) => step.includes('TEMP B-TREE')).join()).not.toMatch(/GROUP|ORDER/);
    }
  });
});
