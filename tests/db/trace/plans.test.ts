import Sqlite from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { expect, it, onTestFinished } from 'vitest';
import type { Database } from '@/db/client';
import { usedInYear } from '@/db/queries/shelf/usedInYear';
import { traceCase } from '@/db/queries/trace/caseTrace';
import { loadsInDoubt } from '@/db/queries/trace/loadsAround';
import { type LotSeen, traceLot } from '@/db/queries/trace/lot';
import { recallReach } from '@/db/queries/trace/reach';
import { listClosedRecalls, listOpenRecalls } from '@/db/queries/trace/recallList';
import { slotWindow } from '@/db/queries/trace/slotWindow';
import { type Reading, THE_PROGRAM } from '@/db/reader';
import * as schema from '@/db/schema';
import { itemId, loadId, setId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { CASES_A_PAGE, type CasePageAsked } from '@/lib/trace/casePage';
import { historyDatabase } from '../../setup/database';

/** Tables that grow with every day of a hospital: none of them is ever read from end to end. */
const GROWING = [
  'piece_moves',
  'ledger',
  'packs',
  'turns',
  'turn_steps',
  'cases',
  'case_picks',
  'loads',
  'load_packs',
  'load_indicators',
  'stock',
  'slot_holdings',
  'slot_knots',
  'usage_months',
];

/** The connection that reads, which the type of queries does not show. */
const clientOf = (db: Database) => (db.read as unknown as { $client: Sqlite.Database }).$client;

const asProgram = ({ read }: Database): Reading => ({ read, reader: THE_PROGRAM });

/** What is asked of the history database meanwhile, each once, with how it is answered. */
async function plansOf(ask: (db: Reading) => unknown): Promise<{ query: string; steps: string[] }[]> {
  const path = clientOf(await historyDatabase()).name;
  const asked = new Set<string>();
  const client = new Sqlite(path, { readonly: true, verbose: (text) => asked.add(String(text)) });
  onTestFinished(() => void client.close());
  const read = drizzle(client, { schema });
  await ask({ read, reader: { id: 'person_nell-ashdown', role: 'incidentLead' } as never });
  const plain = new Sqlite(path, { readonly: true });
  onTestFinished(() => void plain.close());
  return [...asked].map((query) => ({
    query,
    steps: plain
      .prepare<[], { detail: string }>(`EXPLAIN QUERY PLAN ${query}`)
      .all()
      .map(({ detail }) => detail),
  }));
}

function expectAlongIndexes(plans: readonly { query: string; steps: string[] }[]): string[] {
  for (const { query, steps } of plans) {
    // an alias of a growing table that is scanned is named by the query's own FROM or JOIN
    const scanned = steps.flatMap((step) => /^SCAN (\w+)\b(?! VIRTUAL)/.exec(step)?.[1] ?? []);
    const tables = scanned.map(
      (name) =>
        new RegExp(`(?:FROM|JOIN)\\s+"?(\\w+)"?(?:\\s+AS)?\\s+"?${name}"?\\b`, 'i').exec(query)?.[1] ?? name,
    );
    expect([query, tables.filter((table) => GROWING.includes(table))]).toEqual([query, []]);
  }
  return plans.flatMap(({ steps }) => steps);
}

const using = (steps: readonly string[], index: string) =>
  steps.some((step) => new RegExp(`^SEARCH .* USING (COVERING )?INDEX ${index} `).test(step));

/** A lot that went into many sets, which many cases may have had since, and a load that ran. */
async function something() {
  const db = await historyDatabase();
  const client = clientOf(db);
  const [lot] = client
    .prepare<[], { lot: string; itemId: string }>(
      `SELECT lot, itemId FROM (
          SELECT lot, item_id AS itemId, min(done_at) AS since FROM piece_moves
          WHERE lot IS NOT NULL AND to_set_id IS NOT NULL
          GROUP BY 1, 2 HAVING count(DISTINCT to_set_id) >= 5) one
        ORDER BY (SELECT count(DISTINCT case_id) FROM piece_moves used
          WHERE used.item_id = itemId AND used.done_at > since AND used.from_set_id IN
            (SELECT to_set_id FROM piece_moves came WHERE came.item_id = itemId AND came.lot = one.lot)) DESC, lot
        LIMIT 1`,
    )
    .all();
  const load = client
    .prepare<[], string>(
      `SELECT id FROM loads WHERE state = 'accepted' ORDER BY started_at LIMIT 1 OFFSET 40`,
    )
    .pluck()
    .get();
  const set = client
    .prepare<[], string>(`SELECT to_set_id FROM piece_moves WHERE to_set_id IS NOT NULL LIMIT 1`)
    .pluck()
    .get();
  const used = client
    .prepare<[], string>(
      `SELECT case_id FROM piece_moves WHERE act = 'implanted' AND from_set_id IS NOT NULL LIMIT 1`,
    )
    .pluck()
    .get();
  if (!lot || !load || !set || !used) throw new Error('the history has lots, loads, sets and cases');
  return { lot, load: loadId.parse(load), set: setId.parse(set), used };
}

it('a recall by lot is read along its indexes: the lot’s own moves, and its slots from the day it came', async () => {
  const { lot } = await something();
  const steps = expectAlongIndexes(await plansOf((db) => traceLot(db, lot.itemId, lot.lot)));
  for (const index of [
    'piece_moves_by_lot',
    'piece_moves_of_unknown_lot',
    'piece_moves_into_slot',
    'piece_moves_out_of_slot',
  ])
    expect([index, using(steps, index)]).toEqual([index, true]);
  // from that day on, and with all that is asked in the index itself
  expect(steps).toContain(
    'SEARCH piece_moves USING COVERING INDEX piece_moves_into_slot (to_set_id=? AND item_id=? AND done_at>?)',
  );
  expect(steps).toContain(
    'SEARCH piece_moves USING COVERING INDEX piece_moves_out_of_slot (from_set_id=? AND item_id=? AND done_at>?)',
  );
});

it('of the cases of a lot, names are looked up for one page; for all only where they are put in order by them', async () => {
  const { lot } = await something();
  /** How long the list of cases is whose names are looked up; the log of statements cuts a long one short, and says by how much. */
  const asked = async (cases?: CasePageAsked) => {
    const plans = await plansOf((db) => traceLot(db, lot.itemId, lot.lot, cases));
    expectAlongIndexes(plans);
    const [one, ...others] = plans.filter(({ query }) => query.includes('CROSS JOIN cases booked'));
    expect(others).toEqual([]);
    const [, text = '', more = '0'] =
      /json_each\('(.*?)'(?:\/\*\+(\d+) bytes\*\/)?\)/.exec(one?.query ?? '') ?? [];
    return text.length + Number(more);
  };
  const told = async (cases?: CasePageAsked) =>
    traceLot(asProgram(await historyDatabase()), lot.itemId, lot.lot, cases);
  const traced = await told();
  const lengthOf = (ids: readonly string[]) => JSON.stringify(ids).length;
  const pageOf = (one: LotSeen | null) => lengthOf((one?.cases.rows ?? []).map(({ id }) => id));
  expect(traced?.cases.counts.total).toBeGreaterThan(CASES_A_PAGE);
  expect(traced?.cases.rows).toHaveLength(CASES_A_PAGE);
  expect(await asked()).toBe(pageOf(traced));
  const byStanding = { order: 'standing', isDescending: true, page: 2 } as const;
  expect(await asked(byStanding)).toBe(pageOf(await told(byStanding)));
  const bySurgeon = { order: 'surgeon', isDescending: false, page: 1 } as const;
  const of = { kind: 'lot', itemId: itemId.parse(lot.itemId), lot: lot.lot } as const;
  const reach = await recallReach((await historyDatabase()).read, of);
  expect(await asked(bySurgeon)).toBe(lengthOf((reach?.cases ?? []).map(({ caseId }) => caseId)));
});

it('a slot read as a whole is read backwards along its indexes, page by page, and is not sorted', async () => {
  const { lot, set } = await something();
  const steps = expectAlongIndexes(await plansOf(({ read }) => slotWindow(read, set, lot.itemId, '2026')));
  expect(using(steps, 'piece_moves_into_slot')).toBe(true);
  expect(using(steps, 'piece_moves_out_of_slot')).toBe(true);
  expect(steps.filter((step) => step.includes('TEMP B-TREE'))).toEqual([]);
});

it('a recall by load is read outwards from it along the line of its steriliser', async () => {
  const { load } = await something();
  const near = expectAlongIndexes(await plansOf(({ read }) => loadsInDoubt(read, load)));
  expect(near).toContain(
    'SEARCH load USING INDEX loads_by_steriliser (steriliser_id=? AND (started_at,number)<(?,?))',
  );
  expect(near).toContain(
    'SEARCH load USING INDEX loads_by_steriliser (steriliser_id=? AND (started_at,number)>(?,?))',
  );
  expect(using(near, 'load_indicators_by_load')).toBe(true);
  expect(near.filter((step) => step.includes('TEMP B-TREE'))).toEqual([]);
  const reach = expectAlongIndexes(
    await plansOf(({ read }) => recallReach(read, { kind: 'load', loadId: load })),
  );
  expect(using(reach, 'case_picks_by_pack')).toBe(true);
});

it('a recall of an item, of a set, and a case backward are read along indexes', async () => {
  const { lot, set, used } = await something();
  const item = itemId.parse(lot.itemId);
  const ofItem = expectAlongIndexes(
    await plansOf(({ read }) => recallReach(read, { kind: 'item', itemId: item })),
  );
  for (const index of ['piece_moves_by_item', 'slot_holdings_of_line', 'stock_by_item'])
    expect([index, using(ofItem, index)]).toEqual([index, true]);
  const ofSet = expectAlongIndexes(
    await plansOf(({ read }) => recallReach(read, { kind: 'set', setId: set })),
  );
  expect(using(ofSet, 'case_picks_by_set')).toBe(true);
  const ofCase = expectAlongIndexes(await plansOf((db) => traceCase(db, used)));
  expect(using(ofCase, 'piece_moves_by_case')).toBe(true);
});

it('usage of every item over twelve months reads those months of each item', async () => {
  const steps = expectAlongIndexes(
    await plansOf(({ read }) => usedInYear(read, plainDate.parse('2026-01-14'))),
  );
  expect(steps).toContain('SEARCH usage USING PRIMARY KEY (item_id=? AND month>?)');
});

it('the list of recalls is read a page at a time', async () => {
  const steps = expectAlongIndexes(
    await plansOf(async (db) => {
      await listOpenRecalls(db);
      await listClosedRecalls(db, null);
    }),
  );
  expect(steps.some((step) => step.includes('recalls_open'))).toBe(true);
  expect(using(steps, 'recalls_closed')).toBe(true);
});
