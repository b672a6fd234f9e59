import { isNotNull, type SQL, sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { movesOfCase, setsOfCase, traceCase } from '@/db/queries/trace/caseTrace';
import { findForTrace, lotsNamed, lotsOfItem } from '@/db/queries/trace/find';
import { lotOnRecord } from '@/db/queries/trace/lotFacts';
import {
  casesOfLoad,
  casesOfTurn,
  loadsOfSteriliser,
  stepsOfPerson,
  tracePerson,
  traceSteriliser,
} from '@/db/queries/trace/period';
import { THE_PROGRAM } from '@/db/reader';
import { loads } from '@/db/schema';
import { historyDatabase } from '../../setup/database';

const AT = '2026-01-14T09:00:00.000Z';
const asProgram = (db: Database) => ({ read: db.read, reader: THE_PROGRAM }) as const;

const stepsOf = (db: Database, query: SQL) =>
  (db.read.all(sql`EXPLAIN QUERY PLAN ${query}`) as { detail: string }[]).map(({ detail }) => detail);

describe('the queries of a trace', () => {
  it('go along indexes alone', async () => {
    const db = await historyDatabase();
    const asked = {
      movesOfCase: movesOfCase('case_a'),
      setsOfCase: setsOfCase('case_a'),
      lotsNamed: lotsNamed('4711'),
      lotsOfItem: lotsOfItem('item_a'),
      loadsOfSteriliser: loadsOfSteriliser('steriliser_1', AT, AT),
      casesOfLoad: casesOfLoad('load_a'),
      stepsOfPerson: stepsOfPerson('person_a', AT, AT),
      casesOfTurn: casesOfTurn('turn_a'),
    };
    for (const [name, query] of Object.entries(asked))
      expect([name, stepsOf(db, query).filter((step) => /\bSCAN\b/.test(step))]).toEqual([name, []]);
  });

  it('find lots, items, sets, loads and cases by what they are called, and a lot in its maker’s code', async () => {
    const db = await historyDatabase();
    const [lot] = db.read.all(sql`
      SELECT move.lot, move.item_id AS itemId, item.gtin, item.code FROM piece_moves move JOIN items item ON item.id = move.item_id
        WHERE move.lot IS NOT NULL AND item.gtin IS NOT NULL ORDER BY move.seq LIMIT 1`) as {
      lot: string;
      itemId: string;
      gtin: string;
      code: string;
    }[];
    if (!lot) throw new Error('a lot of an item with a number was here');
    const find = async (text: string) => findForTrace(asProgram(db), text, AT);
    const named = expect.objectContaining({ kind: 'lot', itemId: lot.itemId, lot: lot.lot });
    expect((await find(lot.lot)).found).toContainEqual(named);
    expect((await find(`(01)${lot.gtin}(10)${lot.lot}`)).found).toContainEqual(named);
    expect(await find(`(01)${lot.gtin}(10)NEVER`)).toMatchObject({ unknownLot: 'NEVER' });
    expect((await find(lot.code)).found).toContainEqual(
      expect.objectContaining({ kind: 'item', itemId: lot.itemId }),
    );
    expect((await find('SFS-02')).found).toContainEqual(
      expect.objectContaining({ kind: 'set', code: 'SFS-02' }),
    );
    const [load] = await db.read.select().from(loads).where(isNotNull(loads.startedAt)).limit(1);
    expect((await find(load?.number ?? '')).found).toContainEqual(
      expect.objectContaining({ kind: 'load', loadId: load?.id }),
    );
    const [booked] = db.read.all(sql`SELECT id, reference FROM cases LIMIT 1`) as {
      id: string;
      reference: string;
    }[];
    expect((await find(booked?.reference ?? '')).found).toContainEqual(
      expect.objectContaining({ kind: 'case', caseId: booked?.id }),
    );
    expect(await find('   ')).toEqual({ found: [], unknownLot: null });
    expect((await find('no such thing at all')).found).toEqual([]);
  });

  it('tell backward what they tell forward: each lot a case may have had reaches that case with the same bounds', async () => {
    const db = await historyDatabase();
    const rows = db.read.all(sql`
      SELECT case_id AS id FROM piece_moves WHERE act = 'implanted' AND from_set_id IS NOT NULL GROUP BY case_id
        ORDER BY max(seq) DESC LIMIT 12`) as { id: string }[];
    let compared = 0;
    for (const { id } of rows) {
      const traced = await traceCase(asProgram(db), id);
      for (const { itemId, setId, outcome, lots, unknown, contradicted } of traced?.pieces ?? []) {
        if (setId === null || contradicted) continue;
        for (const { lot, lo, hi } of lots) {
          const forward = lotOnRecord(db.read, itemId, lot)?.trace.cases.find(({ caseId }) => caseId === id);
          const part = forward?.parts.find((one) => one.setId === setId && one.outcome === outcome);
          // forward, what came without a lot may be of it too
          expect(part?.lo).toBe(lo);
          expect(part?.hi).toBeGreaterThanOrEqual(hi);
          if (unknown === 0) expect(part?.hi).toBe(hi);
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(40);
    expect(await traceCase(asProgram(db), 'case_none')).toBeNull();
  });

  it('tell what a steriliser ran and a person handled in a period, with the cases it went to', async () => {
    const db = await historyDatabase();
    const from = '2025-11-01T00:00:00.000Z';
    const until = '2025-12-01T00:00:00.000Z';
    const ran = await traceSteriliser(asProgram(db), 'steriliser_1', from, until);
    const known = (await db.read.select().from(loads)).filter(
      (one) =>
        one.steriliserId === 'steriliser_1' && (one.startedAt ?? '') >= from && (one.startedAt ?? '') < until,
    );
    expect(known.length).toBeGreaterThan(5);
    expect(ran?.rows.map(({ id }) => id).sort()).toEqual(known.map(({ id }) => id).sort());
    expect(ran?.rows.some(({ caseIds }) => caseIds.length > 0)).toBe(true);
    const handled = await tracePerson(asProgram(db), 'person_wren-adeyemi', from, until);
    const turns = db.read.all(sql`SELECT DISTINCT turn_id AS id FROM turn_steps
      WHERE person_id = 'person_wren-adeyemi' AND done_at >= ${from} AND done_at < ${until}`) as {
      id: string;
    }[];
    expect(turns.length).toBeGreaterThan(0);
    expect(handled?.rows.map(({ id }) => id).sort()).toEqual(turns.map(({ id }) => id).sort());
    expect(handled?.rows.some(({ caseIds }) => caseIds.length > 0)).toBe(true);
    expect(await traceSteriliser(asProgram(db), 'steriliser_none', from, until)).toBeNull();
  });
});
