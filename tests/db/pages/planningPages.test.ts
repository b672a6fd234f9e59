import Sqlite from 'better-sqlite3';
import { type SQL, sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { appendLedger } from '@/db/ledger';
import { recordMoves } from '@/db/operations/pieces/record-moves';
import { keptCaseCosts, loadCaseCosts } from '@/db/queries/costs/caseCosts';
import { keptHoldings } from '@/db/queries/keptHoldings';
import { thingNamed } from '@/db/queries/ledger/thingNamed';
import { loadShelfLosses } from '@/db/queries/loss/shelfLosses';
import { listClosedRecalls, listOpenRecalls } from '@/db/queries/trace/recallList';
import { recalls, setContents } from '@/db/schema';
import { plainDate } from '@/lib/quantities/plainDate';
import { DEMO_NOW, demoDatabase, demoDatabaseFile, historyDatabase } from '../../setup/database';

const planOf = (db: Database, query: SQL): string =>
  db.read
    .all<{ detail: string }>(sql`EXPLAIN QUERY PLAN ${query}`)
    .map(({ detail }) => detail)
    .join('\n');

/** No table that grows with the years is gone through. */
const GOES_THROUGH =
  /SCAN (cases|ledger|turns|turn_steps|piece_moves|move|notices|packs|loads)\b(?! USING (COVERING )?INDEX)/;

describe('the queries of planning and reports', () => {
  it('find cases of days, what a person was told, and things by their names, by indexes', async () => {
    const db = await demoDatabase();
    const plans = {
      days: planOf(
        db,
        sql`SELECT * FROM cases WHERE case_date >= '2026-01-14' AND case_date < '2026-01-21' AND cancelled_at IS NULL`,
      ),
      told: planOf(
        db,
        sql`SELECT * FROM notices WHERE person_id = 'person_x' ORDER BY told_at DESC, id DESC LIMIT 200`,
      ),
      named: planOf(db, sql`SELECT id FROM cases WHERE id = 'x' OR reference = 'x' OR reference = 'X'`),
      pack: planOf(db, sql`SELECT id FROM packs WHERE id = 'x' OR number = 'x' OR number = 'X'`),
      load: planOf(db, sql`SELECT id FROM loads WHERE id = 'x' OR number = 'x' OR number = 'X'`),
      turns: planOf(
        db,
        sql`SELECT count(*) FROM turn_steps INDEXED BY turn_steps_sterilised WHERE step = 'inSteriliser' AND set_id = 'x' AND done_at > '2026'`,
      ),
      lives: planOf(
        db,
        sql`SELECT item_id, seq FROM piece_moves WHERE item_id IN (SELECT id FROM items WHERE reprocessing_limit IS NOT NULL)
          AND (to_set_id IS NOT NULL OR from_set_id IS NOT NULL)`,
      ),
      shelf: planOf(
        db,
        sql`SELECT item_id, json_group_array(id) FROM stock WHERE quantity > 0 GROUP BY item_id`,
      ),
    };
    expect(plans.days).toContain('cases_by_date');
    expect(plans.told).toContain('notices_by_person');
    expect(plans.told).not.toContain('TEMP B-TREE');
    expect(plans.turns).toContain('COVERING INDEX turn_steps_sterilised');
    expect(plans.lives).toContain('SEARCH piece_moves USING INDEX piece_moves_by_item');
    expect(plans.shelf).toContain('SCAN stock USING INDEX stock_on_shelf');
    expect(plans.shelf).not.toContain('TEMP B-TREE');
    for (const plan of Object.values(plans)) expect(plan).not.toMatch(GOES_THROUGH);
  });

  it('cost the cases of a period by its days and their own moves', async () => {
    const db = await historyDatabase();
    const plan = planOf(
      db,
      sql`SELECT move.case_id, sum(move.quantity) FROM cases JOIN moves_that_stand move ON move.case_id = cases.id
        WHERE cases.case_date BETWEEN '2025-12-01' AND '2026-01-14' AND cases.ends_at < '2026-01-14T06:30:00.000Z'
        GROUP BY move.case_id`,
    );
    expect(plan).not.toMatch(GOES_THROUGH);
  });
});

describe('what left the shelf by month', () => {
  const both = (db: Database) => {
    const of = (table: string) =>
      db.read.all(sql.raw(`SELECT item_id, month, units FROM ${table} WHERE units <> 0 ORDER BY 1, 2`));
    return { kept: of('shelf_months'), workedOut: of('shelf_months_worked_out') };
  };

  it('is the same as the moves of two years say, and is what losses are worked out from', async () => {
    const db = await historyDatabase();
    const { kept, workedOut } = both(db);
    expect(kept.length).toBeGreaterThan(10);
    expect(kept).toEqual(workedOut);
    expect((await loadShelfLosses(db, plainDate.parse('2026-01-14'), 12)).length).toBeGreaterThan(0);
  });

  it('follows what leaves, what comes back, and what a corrected record says did not', async () => {
    const path = await demoDatabaseFile();
    const raw = new Sqlite(path);
    // of picks, cases and records of use nothing is asked here
    raw.pragma('foreign_keys = OFF');
    raw.exec('DROP TRIGGER only_moves_of_a_record_of_use_are_taken_back');
    const heap = raw
      .prepare<[], { id: string; item_id: string }>(
        "SELECT id, item_id FROM stock WHERE form <> 'unsterile' ORDER BY quantity DESC LIMIT 1",
      )
      .get();
    const move = raw.prepare(`INSERT INTO piece_moves
      (act, item_id, quantity, owner, from_stock_id, to_stock_id, to_set_id, to_line_id, case_id, pick_id, done_on, done_at, entered_at)
      VALUES (@act, '${heap?.item_id}', @n, 'ours', @from, @to, @set, @line, @case, @pick, @on, @on, @on)`);
    const none = { from: null, to: null, set: null, line: null, case: null, pick: null };
    const made = (act: string, n: number, on: string, ends: object) =>
      Number(move.run({ ...none, act, n, on, ...ends }).lastInsertRowid);
    const slot = { set: 'set_x', line: 'line_x' };
    const forCase = { case: 'case_x', pick: 'pick_x' };
    raw.exec("INSERT INTO slot_holdings (set_id, line_id, quantity) VALUES ('set_x', 'line_x', 0)");
    made('refilled', 4, '2025-11-03', { from: heap?.id, ...slot });
    made('issued', 3, '2025-12-24', { from: heap?.id, ...forCase });
    made('issued', 2, '2026-01-02', { from: heap?.id, ...forCase });
    const back = made('cameBack', 1, '2026-01-03', { to: heap?.id, ...forCase });
    // from outside, and between places: neither left the shelf
    made('received', 9, '2026-01-04', { to: heap?.id });
    made('moved', 9, '2026-01-04', { from: heap?.id, to: heap?.id });
    const months = () =>
      raw
        .prepare<[string], string>(
          "SELECT month || ' ' || units FROM shelf_months WHERE item_id = ? AND month >= '2025-11' ORDER BY month",
        )
        .pluck()
        .all(heap?.item_id ?? '');
    expect(months()).toEqual(['2025-11 4', '2025-12 3', '2026-01 1']);
    raw.prepare("INSERT INTO moves_taken_back (move_seq, entry_id) VALUES (?, 'entry_x')").run(back);
    expect(months()).toEqual(['2025-11 4', '2025-12 3', '2026-01 2']);
    const all = (table: string) =>
      raw.prepare(`SELECT item_id, month, units FROM ${table} WHERE units <> 0 ORDER BY 1, 2`).all();
    expect(all('shelf_months')).toEqual(all('shelf_months_worked_out'));
    raw.close();
  });
});

describe('what lies in sets', () => {
  it('reads as line by line, stays the same object while nothing changed, and follows every change', async () => {
    const db = await demoDatabase();
    const lineByLine = () =>
      new Map(
        db.read
          .all<{ set_id: string; pieces: number; grams: number | null }>(sql`
            SELECT set_id, sum(found) AS pieces,
              iif(sum(found > 0 AND mass_grams IS NULL) > 0, NULL, coalesce(sum(found * mass_grams), 0)) AS grams
            FROM set_contents JOIN configuration_lines line ON line.id = line_id JOIN items ON items.id = line.item_id
            GROUP BY set_id`)
          .map((row) => [row.set_id, { pieces: row.pieces, grams: row.grams }]),
      );
    const read = async () => {
      const holdings = await keptHoldings(db.read);
      return {
        holdings,
        sums: new Map(
          // a set nobody has put anything into has no lines to add up
          [...holdings].flatMap(([id, { contents, massGrams }]) =>
            contents.length === 0
              ? []
              : [[id, { pieces: contents.reduce((sum, { found }) => sum + found, 0), grams: massGrams }]],
          ),
        ),
      };
    };
    const first = await read();
    expect(first.sums).toEqual(lineByLine());
    const again = await read();
    for (const [id, holding] of first.holdings) expect(again.holdings.get(id)).toBe(holding);
    const [row] = db.read.select().from(setContents).limit(1).all();
    await db.tx(async (write) =>
      write.run(
        sql`UPDATE set_contents SET found = found + 1 WHERE set_id = ${row?.setId} AND line_id = ${row?.lineId}`,
      ),
    );
    const then = await read();
    expect(then.sums).toEqual(lineByLine());
    expect(then.holdings.get(row?.setId ?? '')).not.toBe(first.holdings.get(row?.setId ?? ''));
    // another mass of an item is another mass of every set it lies in
    await db.tx(async (write) =>
      write.run(sql`UPDATE items SET mass_grams = 1, revision = revision + 1 WHERE mass_grams IS NOT NULL`),
    );
    expect((await read()).sums).toEqual(lineByLine());
  });
});

describe('what cases cost', () => {
  it('is kept while nothing is written and no case ends, and is the same as costed anew after either', async () => {
    const db = await historyDatabase();
    const period = { from: plainDate.parse('2025-11-01'), until: plainDate.parse('2026-01-14') };
    const at = DEMO_NOW.toISOString();
    const kept = await keptCaseCosts(db, period, at);
    expect(kept.cases.length).toBeGreaterThan(5);
    expect(await keptCaseCosts(db, period, at)).toBe(kept);
    expect(kept).toEqual(await loadCaseCosts(db, period, at));
    // another period is another report
    expect(await keptCaseCosts(db, { ...period, from: period.until }, at)).not.toBe(kept);
    const before = await keptCaseCosts(db, period, at);
    const [used] = db.read.all<{ case_id: string; item_id: string; set_id: string; line_id: string }>(sql`
      SELECT case_id, item_id, from_set_id AS set_id, from_line_id AS line_id FROM piece_moves
      WHERE act = 'implanted' AND from_set_id IS NOT NULL AND done_on > '2025-11-10' LIMIT 1`);
    if (!used) throw new Error('the demo used something from a set');
    await db.tx(async (write) => {
      await recordMoves(write, [
        {
          ...{ act: 'found', itemId: used.item_id, lot: null, useBy: null, quantity: 1, unitPence: 0 },
          ...{ to: { setId: used.set_id, lineId: used.line_id }, doneAt: at, enteredAt: at, personId: null },
        },
        {
          ...{ act: 'wasted', itemId: used.item_id, lot: null, useBy: null, quantity: 1, unitPence: 98_765 },
          ...{ from: { setId: used.set_id, lineId: used.line_id }, caseId: used.case_id, reason: 'dropped' },
          ...{ doneAt: at, enteredAt: at, personId: null },
        },
      ] as Parameters<typeof recordMoves>[1]);
      await appendLedger(write, {
        ...{ doneAt: at, enteredAt: at, personId: null, action: 'record-use', subjectKind: 'case' },
        ...{ subjectId: used.case_id, detail: {} },
      });
    });
    const after = await keptCaseCosts(db, period, at);
    expect(after).not.toBe(before);
    expect(after).toEqual(await loadCaseCosts(db, period, at));
    const wasted = ({ cases }: typeof after) =>
      cases.find(({ caseId }) => caseId === used.case_id)?.cost.wasted.pence ?? Number.NaN;
    expect(wasted(after) - wasted(before)).toBe(98_765);
    // nothing is written, but a day on more cases are over
    const nextDay = new Date(DEMO_NOW.getTime() + 86_400_000).toISOString();
    const then = await keptCaseCosts(db, period, nextDay);
    expect(then).toEqual(await loadCaseCosts(db, period, nextDay));
    expect(then.cases.length + then.notRecorded).toBeGreaterThan(after.cases.length + after.notRecorded);
  });
});

describe('a thing asked for by its name', () => {
  it('is found however it is typed', async () => {
    const db = await demoDatabase();
    const [one] = db.read.all<{ id: string; reference: string }>(
      sql`SELECT id, reference FROM cases LIMIT 1`,
    );
    const [set] = db.read.all<{ id: string; code: string }>(sql`SELECT id, code FROM sets LIMIT 1`);
    for (const text of [one?.id, one?.reference, one?.reference.toLowerCase()])
      expect(await thingNamed(db, text ?? '')).toEqual({ id: one?.id, label: one?.reference, kind: 'case' });
    expect(await thingNamed(db, set?.code.toLowerCase() ?? '')).toMatchObject({ id: set?.id, kind: 'set' });
    expect(await thingNamed(db, 'nothing of that name')).toBeNull();
  });

  it('is called in capitals, wherever there are many of its kind', async () => {
    const db = await historyDatabase();
    const small = db.read.all(sql`
      SELECT reference FROM cases WHERE reference <> upper(reference)
      UNION ALL SELECT number FROM packs WHERE number <> upper(number)
      UNION ALL SELECT number FROM loads WHERE number <> upper(number)`);
    expect(small).toEqual([]);
  });
});

describe('recalls', () => {
  it('are listed with all that are open, and closed ones page by page', async () => {
    const db = await demoDatabase();
    const moment = (n: number) => new Date(Date.UTC(2020, 0, 1 + n)).toISOString();
    await db.tx(async (write) => {
      for (let n = 0; n < 122; n += 1) {
        const closed = n >= 2;
        await write.insert(recalls).values({
          ...{
            id: `recall_${n}`,
            number: numbered(n),
            kind: 'item',
            itemId: 'item_sf-l27-24',
            reason: 'A notice.',
          },
          ...{ isRehearsal: false, openedBy: 'person_nell-ashdown', openedAt: moment(n), revision: 1 },
          found: { cases: [], sets: [], heaps: [], unknownLots: [], contradictions: [] },
          ...(closed
            ? {
                ...{ closedBy: 'person_nell-ashdown', closedWith: 'person_joseph-quayle' },
                ...{ closedAt: moment(n + 1), closedBecause: 'All came back.' },
              }
            : {}),
        });
      }
    });
    expect((await listOpenRecalls(db)).map(({ number }) => number)).toEqual(['R-0001', 'R-0000']);
    const seen: string[] = [];
    let olderThan: string | null = null;
    for (let pages = 0; pages < 10; pages += 1) {
      const page = await listClosedRecalls(db, olderThan);
      expect(page.recalls.length).toBeLessThanOrEqual(50);
      seen.push(...page.recalls.map(({ number }) => number));
      if (page.olderThan === null) break;
      olderThan = page.olderThan;
    }
    expect(seen).toEqual(Array.from({ length: 120 }, (_, at) => numbered(121 - at)));
  });
});

const numbered = (n: number) => `R-${String(n).padStart(4, '0')}`;
