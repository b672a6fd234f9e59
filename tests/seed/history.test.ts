import { sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { loadDemo } from '@/seed/load';
import { unbalanced } from '../db/pieces/balance';
import { DEMO_NOW, demoDatabase, emptyDatabase, historyDatabase } from '../setup/database';

describe('two years behind the demo', () => {
  it('end with what lies in every slot and heap now', async () => {
    const [without, withHistory] = [await demoDatabase(), await historyDatabase()];
    expect(await unbalanced(withHistory)).toEqual([]);
    const contents = sql`SELECT set_id, line_id, found FROM set_contents ORDER BY set_id, line_id`;
    expect(withHistory.read.all(contents)).toEqual(without.read.all(contents));
    // but for what came of an order, which only the years behind it ask for
    const shelf = sql`
      SELECT id, item_id, lot, use_by, quantity FROM stock
      WHERE quantity > 0 AND id NOT IN (SELECT stock_id FROM supply_order_parts) ORDER BY id`;
    expect(withHistory.read.all(shelf)).toEqual(without.read.all(shelf));
  });

  it('begin before their first case, at whatever hour the demo is loaded', async () => {
    const db = emptyDatabase();
    // a case of the first day had begun earlier in the day than this
    await loadDemo({ db, now: new Date('2026-11-26T12:18:00Z') });
    expect(await unbalanced(db)).toEqual([]);
    const early = db.read.all(sql`
      SELECT cases.id FROM cases JOIN piece_moves ON piece_moves.case_id = cases.id
      WHERE starts_at < (SELECT min(done_at) FROM piece_moves WHERE act = 'opening')`);
    expect(early).toEqual([]);
  });

  it('keep pieces: what was received is implanted, wasted, gone, or still there', async () => {
    const { read } = await historyDatabase();
    const [sums] = read.all<Record<'came' | 'went' | 'here', number>>(sql`
      SELECT
        (SELECT sum(quantity) FROM piece_moves WHERE act IN ('opening', 'received', 'shelved', 'found')) AS came,
        (SELECT sum(quantity) FROM piece_moves
          WHERE act IN ('implanted', 'wasted', 'notFound', 'setAside', 'sentBack')) AS went,
        (SELECT sum(quantity) FROM stock) + (SELECT sum(quantity) FROM slot_holdings) AS here`);
    expect((sums?.came ?? 0) - (sums?.went ?? 0)).toBe(sums?.here);
    // every pack that was issued came back or is accounted for in its case
    const open = read.all(sql`
      SELECT pick_id FROM piece_moves WHERE pick_id IS NOT NULL GROUP BY pick_id
      HAVING sum(iif(act = 'issued', quantity, -quantity)) <> 0`);
    expect(open).toEqual([]);
  });

  it('tell of more than nine hundred cases, all over, and hold together as the tables ask', async () => {
    const { read } = await historyDatabase();
    const [{ cases } = { cases: 0 }] = read.all<{ cases: number }>(
      sql`SELECT count(DISTINCT case_id) AS cases FROM piece_moves WHERE act = 'implanted'`,
    );
    expect(cases).toBeGreaterThan(900);
    const late = read.all(sql`SELECT seq FROM piece_moves WHERE done_at > ${DEMO_NOW.toISOString()}`);
    expect(late).toEqual([]);
    expect(read.all(sql`PRAGMA foreign_key_check`)).toEqual([]);
    // a set is in one case at a time, and takes its steps in order
    const overlaps = read.all(sql`
      SELECT a.case_id FROM case_picks a JOIN case_picks b ON b.set_id = a.set_id AND b.id > a.id
      JOIN cases ca ON ca.id = a.case_id JOIN cases cb ON cb.id = b.case_id
      WHERE ca.starts_at < cb.ends_at AND cb.starts_at < ca.ends_at`);
    expect(overlaps).toEqual([]);
    // and a second one beside the first goes out sterile and comes back like any other
    const besides = read.all<{ turns: number; back: number }>(sql`
      SELECT (SELECT count(*) FROM packs WHERE packs.id = pick.pack_id AND packs.set_id = pick.set_id) AS turns,
        (SELECT count(*) FROM case_returns WHERE pick_id = pick.id) AS back
      FROM case_picks pick WHERE pick.id GLOB '*-beside'`);
    expect(besides.length).toBeGreaterThan(40);
    expect(besides.filter(({ turns, back }) => turns !== 1 || back !== 1)).toEqual([]);
    const backwards = read.all(sql`
      SELECT seq FROM (SELECT seq, done_at, lag(done_at) OVER (PARTITION BY set_id ORDER BY seq) AS before FROM turn_steps)
      WHERE done_at < before`);
    expect(backwards).toEqual([]);
  });
});
