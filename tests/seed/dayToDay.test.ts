import { sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { listOrders } from '@/db/queries/restock/orders';
import { loadTogether } from '@/db/queries/review/together';
import { lotOnRecord } from '@/db/queries/trace/lotFacts';
import { listOpenRecalls } from '@/db/queries/trace/recallList';
import { findRecall } from '@/db/queries/trace/recalls';
import { THE_PROGRAM } from '@/db/reader';
import { recallId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { riskLines } from '@/lib/theatre/planning/risk';
import { loadDemo } from '@/seed/load';
import { plannedAt } from '../fixtures/demoReport';
import { DEMO_NOW, emptyDatabase, historyDatabase } from '../setup/database';

const asProgram = ({ read }: Database) => ({ read, reader: THE_PROGRAM }) as const;
const TODAY = '2026-01-14';

describe('what is under way in the demo', () => {
  it('is a recall of the lot on the held shelf, some of which went to cases; not all who were asked have answered', async () => {
    const db = await historyDatabase();
    const [open, ...others] = await listOpenRecalls(asProgram(db));
    expect(others).toEqual([]);
    expect(open).toMatchObject({ number: 'R-00001', isRehearsal: false });
    const recall = await findRecall(asProgram(db), recallId.parse(open?.id));
    const answered = recall?.tasks.filter(({ acknowledgedAt }) => acknowledgedAt !== null) ?? [];
    expect(answered.length).toBeGreaterThan(2);
    expect((recall?.tasks.length ?? 0) - answered.length).toBeGreaterThan(2);
    // received = implanted + wasted + held, with nothing unaccounted for: four lie on the held shelf
    const lot = lotOnRecord(db.read, 'item_sf-c35-16', 'C35-4009');
    expect(lot?.trace.balance).toMatchObject({
      received: 7,
      implanted: { lo: 2, hi: 2 },
      wasted: { lo: 1, hi: 1 },
    });
    expect(recall?.found.cases.map(({ standing }) => standing)).toEqual([
      'confirmed',
      'confirmed',
      'confirmed',
    ]);
    expect(recall?.found.sets).toEqual([]);
    const [heap] = db.read.all(sql`SELECT quantity, held_because FROM stock WHERE lot = 'C35-4009'`);
    expect(heap).toEqual({ quantity: 4, held_because: 'recall' });
  });

  it('are orders: one past the day it was due, one due today of which a part came, one that nobody can date', async () => {
    const orders = await listOrders(asProgram(await historyDatabase()));
    const by = (test: (order: (typeof orders)[number]) => boolean) => orders.filter(test).length;
    expect(by(({ state }) => state === 'open')).toBe(3);
    expect(by(({ expectedOn, here }) => expectedOn !== null && expectedOn < TODAY && here === 0)).toBe(1);
    expect(by(({ expectedOn, here, ordered }) => expectedOn === TODAY && here > 0 && here < ordered)).toBe(1);
    expect(by(({ expectedOn }) => expectedOn === null)).toBe(1);
  });

  it('are sets that were opened together more often than chance would have it', async () => {
    const period = { from: plainDate.parse('2025-01-14'), until: plainDate.parse(TODAY) };
    const { pairs } = await loadTogether(
      asProgram(await historyDatabase()),
      'configuration_lfl',
      period,
      DEMO_NOW.toISOString(),
    );
    expect(pairs.map(({ otherId }) => otherId)).toContain('configuration_lfs');
  });

  for (const hour of ['04:00', '17:00', '23:00'])
    it(`is a night that wants a set which is not back, if it is loaded at ${hour}`, async () => {
      const db = emptyDatabase();
      const now = new Date(`2026-01-14T${hour}:00Z`);
      await loadDemo({ db, now, history: false });
      const { planning, answer } = await plannedAt(db, now.toISOString());
      const night = riskLines(planning, answer).find((line) => line.case.reference === 'LM-26-7K2P');
      expect(night?.level).not.toBe('fine');
      expect(JSON.stringify(night?.standing)).toContain('SFL-07');
    });
});
