import { and, eq, gt, isNotNull, sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { type Database, readAs } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { acknowledgeRecall } from '@/db/operations/trace/acknowledge-recall';
import { closeRecall } from '@/db/operations/trace/close-recall';
import { openRecall } from '@/db/operations/trace/open-recall';
import { caseCostsSeen } from '@/db/queries/costs/caseCosts';
import { loadsInLine } from '@/db/queries/loads/loadsInLine';
import { listPeople, type Person } from '@/db/queries/people';
import { traceCase } from '@/db/queries/trace/caseTrace';
import { loadsInDoubt } from '@/db/queries/trace/loadsAround';
import { traceLot } from '@/db/queries/trace/lot';
import { recallReach } from '@/db/queries/trace/reach';
import { traceReach } from '@/db/queries/trace/reached';
import { type ClosedRecalls, listClosedRecalls, listOpenRecalls } from '@/db/queries/trace/recallList';
import { findRecall, recallCases } from '@/db/queries/trace/recalls';
import { THE_PROGRAM } from '@/db/reader';
import {
  cases,
  loads,
  notices,
  pieceMoves,
  recallHolds,
  recalls,
  recallTasks,
  sets,
  stock,
} from '@/db/schema';
import { recallCaseColumns } from '@/lib/documents/recallReport';
import { itemId, type NewId, recallId, setId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import { csvOf } from '@/lib/lists/csv';
import { touchedBy } from '@/lib/loads/touched';
import type { Attestation } from '@/lib/people/attestation';
import type { Role } from '@/lib/people/role';
import { plainDate } from '@/lib/quantities/plainDate';
import {
  AS_LOOKED_AT,
  CASE_ORDERS,
  CASES_A_PAGE,
  type CasePageAsked,
  FIRST_CASES,
} from '@/lib/trace/casePage';
import { recallWords } from '@/lib/wording/recall';
import { historyDatabase } from '../../setup/database';

const AT = '2026-01-14T09:00:00.000Z';
let ids = 0;
const newId: NewId = (prefix) => {
  ids += 1;
  return `${prefix}_recalltest-${ids}`;
};

function done<T>(outcome: Outcome<T, unknown>): T {
  if (!outcome.ok) throw new Error(outcome.refusal.problems.map(({ message }) => message).join(' | '));
  return outcome.value;
}

async function hospital() {
  const db = await historyDatabase();
  const people = await listPeople({ read: db.read, reader: THE_PROGRAM });
  const one = (role: Role, place = 0): Person => {
    const found = people.filter((person) => person.role === role)[place];
    if (!found) throw new Error(`the demo has a ${role}`);
    return found;
  };
  return { db, lead: one('incidentLead'), manager: one('theatreManager'), keeper: one('stockKeeper'), one };
}

const asProgram = (db: Database) => ({ read: db.read, reader: THE_PROGRAM }) as const;

/** A lot that went into the most slots of sets that are still here. */
function mixedLot(db: Database) {
  const [found] = db.read.all(sql`
    SELECT lot, item_id AS itemId, count(DISTINCT to_set_id) AS slots FROM piece_moves
      WHERE lot IS NOT NULL AND to_set_id IS NOT NULL GROUP BY lot, item_id ORDER BY slots DESC, lot LIMIT 1`) as {
    lot: string;
    itemId: string;
    slots: number;
  }[];
  if (!found) throw new Error('lots went into slots');
  return { kind: 'lot', itemId: itemId.parse(found.itemId), lot: found.lot } as const;
}

const attested = (by: Person, at = AT): Attestation => ({
  personId: by.id,
  meaning: 'iCloseThisRecall',
  method: 'password',
  at,
});

const asking = (db: Database, person: Person, of: Parameters<typeof recallReach>[1]) => ({
  db,
  now: AT,
  newId,
  person,
  recallId: recallId.parse(newId('recall')),
  of,
  reason: 'The maker calls back the lot: threads out of tolerance.',
  noticeReference: 'FSN-2026-014',
  isRehearsal: false,
  holdUnknown: false,
});

describe('the trace of a lot', () => {
  it('balances for every lot of two years that went into slots, and its heaps are those of the shelf', async () => {
    const { db } = await hospital();
    const lots = db.read.all(sql`
      SELECT DISTINCT lot, item_id AS itemId FROM piece_moves WHERE lot IS NOT NULL AND to_set_id IS NOT NULL
        ORDER BY lot LIMIT 150`) as { lot: string; itemId: string }[];
    expect(lots.length).toBeGreaterThan(100);
    for (const { lot, itemId: item } of lots) {
      const traced = await traceLot(asProgram(db), item, lot);
      if (!traced) throw new Error(`${lot} was here`);
      if (!traced.trace.balance) throw new Error('the program is blind to nothing');
      const { received, implanted, wasted, held, returned, unaccounted } = traced.trace.balance;
      const all = [implanted, wasted, held, returned, unaccounted];
      expect(all.reduce((sum, { lo }) => sum + lo, 0)).toBeLessThanOrEqual(received);
      expect(all.reduce((sum, { hi }) => sum + hi, 0)).toBeGreaterThanOrEqual(received);
      const [came] = db.read.all(sql`SELECT sum(quantity) AS pieces FROM piece_moves
        WHERE lot = ${lot} AND item_id = ${item} AND act = 'received'`) as { pieces: number }[];
      expect(received).toBe(came?.pieces);
      for (const { stockId, quantity } of traced.trace.heaps) {
        const [heap] = await db.read.select().from(stock).where(eq(stock.id, stockId));
        expect(heap?.quantity).toBe(quantity);
      }
    }
  });

  it('names every case once over its pages, with its bounds and its reasons, in every order', async () => {
    const { db } = await hospital();
    const { itemId: item, lot } = mixedLot(db);
    const traced = await traceLot(asProgram(db), item, lot);
    const reach = await recallReach(db.read, { kind: 'lot', itemId: item, lot });
    if (!traced || !reach) throw new Error(`${lot} was here`);
    const { total, confirmed, possible, excluded } = traced.cases.counts;
    expect(total).toBe(reach.cases.length);
    for (const [standing, count] of Object.entries({ confirmed, possible, excluded }))
      expect(reach.cases.filter((one) => one.standing === standing)).toHaveLength(count);
    const named = new Map(
      (await db.read.select().from(cases)).map(({ id, reference, caseDate }) => [id, [reference, caseDate]]),
    );
    const byId = new Map(reach.cases.map((one) => [one.caseId, one]));
    for (const order of CASE_ORDERS) {
      const seen = new Set<string>();
      for (let page = 1; seen.size < total && page <= total; page += 1) {
        const asked = { order, isDescending: page % 2 === 0 && order === 'first', page };
        for (const { id, reference, date, surgeon: _, ...told } of (
          await traceLot(asProgram(db), item, lot, asked)
        )?.cases.rows ?? []) {
          expect(seen.has(id)).toBe(false);
          seen.add(id);
          expect([reference, date]).toEqual(named.get(id));
          expect({ caseId: id, ...told }).toEqual(byId.get(id));
        }
      }
      expect(seen.size).toBe(total);
    }
  });

  it('of a load is everything since the last accepted one, as the whole line of that steriliser says', async () => {
    const { db } = await hospital();
    const rows = await db.read.select().from(loads).where(isNotNull(loads.startedAt));
    const some = rows.filter((_, at) => at % 97 === 0 || rows[at]?.state !== 'accepted');
    expect(some.length).toBeGreaterThan(10);
    for (const { id, steriliserId, state } of some) {
      const whole = touchedBy(await loadsInLine(db.read, steriliserId), id, 'other');
      const near = loadsInDoubt(db.read, id);
      if (state === 'rejected') continue; // what failed may ask for a passed biological result
      expect(near?.loads.map((load) => load.id)).toEqual(whole.loads.map((load) => load.id));
      expect(near?.since?.id).toBe(whole.since?.id);
    }
  });
});

describe('a recall', () => {
  it('holds stock and sets at once, asks the people concerned, and is in the ledger', async () => {
    const { db, lead } = await hospital();
    const of = mixedLot(db);
    const reach = await recallReach(db.read, of);
    const request = asking(db, lead, of);
    const opened = done(await openRecall(request));
    expect(opened.heldSets).toBe(reach?.sets.length);
    expect(opened.heldSets).toBeGreaterThan(0);
    for (const { setId: set } of reach?.sets ?? []) {
      const [row] = await db.read.select().from(sets).where(eq(sets.id, set));
      expect(row?.step).toBe('held');
    }
    const free = await db.read
      .select()
      .from(stock)
      .where(and(eq(stock.itemId, of.itemId), eq(stock.lot, of.lot), gt(stock.quantity, 0)));
    expect(free.every(({ heldBecause }) => heldBecause !== null)).toBe(true);
    const tasks = await db.read.select().from(recallTasks).where(eq(recallTasks.recallId, request.recallId));
    expect(new Set(tasks.map(({ task }) => task))).toContain('lookAtCases');
    const told = await db.read
      .select()
      .from(notices)
      .where(eq(notices.href, `/recalls/${request.recallId}`));
    expect(new Set(told.map(({ personId }) => personId))).toEqual(
      new Set(tasks.map(({ personId }) => personId).filter((id) => id !== lead.id)),
    );
    // the same sent again is opened once; another of the same lot is not opened beside it
    expect(done(await openRecall(request))).toEqual(opened);
    expect(await openRecall(asking(db, lead, of))).toMatchObject({
      ok: false,
      refusal: { because: 'frozen' },
    });
    const ofThisLot = await db.read.select().from(recalls).where(eq(recalls.lot, of.lot));
    expect(ofThisLot.map(({ id }) => id)).toEqual([request.recallId]);
    expect(await findLedgerBreak(db.read)).toBeNull();
    const found = await findRecall(asProgram(db), request.recallId);
    expect(found?.holds.every(({ heldStill }) => heldStill)).toBe(true);
    expect(found?.reach.cases.map(({ caseId }) => caseId).sort()).toEqual(
      reach?.cases.map(({ caseId }) => caseId).sort(),
    );
  });

  it('rehearsed, holds nothing, says so to whoever is told, and bars no recall', async () => {
    const { db, lead } = await hospital();
    const of = mixedLot(db);
    const before = await db.read.select().from(sets);
    const heldBefore = await db.read.select().from(recallHolds);
    const opened = done(await openRecall({ ...asking(db, lead, of), isRehearsal: true, holdUnknown: true }));
    expect(opened).toMatchObject({ heldSets: 0, heldHeaps: 0 });
    expect(await db.read.select().from(sets)).toEqual(before);
    expect(await db.read.select().from(recallHolds)).toEqual(heldBefore);
    const told = await db.read
      .select()
      .from(notices)
      .where(eq(notices.href, `/recalls/${opened.id}`));
    expect(told.length).toBeGreaterThan(2);
    for (const notice of told) expect(notice.detail).toMatchObject({ rehearsal: true });
    const real = done(await openRecall(asking(db, lead, of)));
    const open = (await listOpenRecalls(asProgram(db))).filter(({ id }) => [opened.id, real.id].includes(id));
    expect(open.map(({ isRehearsal }) => isRehearsal).sort()).toEqual([false, true]);
  });

  it('of an item, a set and a load reaches what they reached', async () => {
    const { db, lead } = await hospital();
    const [used] = await db.read.select().from(pieceMoves).where(eq(pieceMoves.act, 'implanted')).limit(1);
    const item = itemId.parse(used?.itemId);
    const ofItem = await recallReach(db.read, { kind: 'item', itemId: item });
    const cases = await db.read
      .selectDistinct({ id: pieceMoves.caseId })
      .from(pieceMoves)
      .where(
        and(
          eq(pieceMoves.itemId, item),
          sql`${pieceMoves.act} IN ('implanted', 'wasted', 'notFound')`,
          isNotNull(pieceMoves.caseId),
        ),
      );
    expect(ofItem?.cases.map(({ caseId }) => caseId).sort()).toEqual(cases.map(({ id }) => id).sort());
    const set = setId.parse(used?.fromSetId);
    const ofSet = await recallReach(db.read, { kind: 'set', setId: set });
    expect(ofSet?.cases.length).toBeGreaterThan(5);
    expect(done(await openRecall(asking(db, lead, { kind: 'set', setId: set })))).toMatchObject({
      heldSets: 1,
    });
    expect(await recallReach(db.read, { kind: 'set', setId: setId.parse('set_none') })).toBeNull();
  });

  it('is acknowledged by those asked, each for themselves', async () => {
    const { db, lead, manager, one } = await hospital();
    const request = asking(db, lead, mixedLot(db));
    done(await openRecall(request));
    const acknowledging = {
      db,
      now: AT,
      person: manager,
      recallId: request.recallId,
      note: 'Told the theatres.',
    };
    expect(done(await acknowledgeRecall(acknowledging))).toEqual({ acknowledged: 1 });
    expect(done(await acknowledgeRecall(acknowledging))).toEqual({ acknowledged: 0 });
    expect(await acknowledgeRecall({ ...acknowledging, person: one('technician') })).toMatchObject({
      ok: false,
      refusal: { because: 'notPermitted' },
    });
    const found = await findRecall(asProgram(db), request.recallId);
    expect(found?.tasks.find(({ personId }) => personId === manager.id)).toMatchObject({
      acknowledgedAt: AT,
      note: 'Told the theatres.',
    });
  });

  it('is closed by two who prove it and say what was found; it lifts no hold and never changes again', async () => {
    const { db, lead, manager, one } = await hospital();
    const request = asking(db, lead, mixedLot(db));
    done(await openRecall(request));
    const closing = {
      db,
      now: AT,
      person: lead,
      recallId: request.recallId,
      baseRevision: 1,
      because: 'All pieces held, and their owner took them back.',
      attestation: attested(lead),
      second: { person: manager, attestation: attested(manager) },
    };
    const alone = { person: lead, attestation: attested(lead) };
    expect(await closeRecall({ ...closing, second: alone })).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
    const technician = { person: one('technician'), attestation: attested(one('technician')) };
    expect(await closeRecall({ ...closing, second: technician })).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
    const stale = { person: manager, attestation: attested(manager, '2026-01-14T08:50:00.000Z') };
    expect(await closeRecall({ ...closing, second: stale })).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
    expect(await closeRecall({ ...closing, because: ' ' })).toMatchObject({
      refusal: { because: 'invalid' },
    });
    expect(await closeRecall({ ...closing, baseRevision: 7 })).toMatchObject({
      refusal: { because: 'conflict' },
    });
    expect(done(await closeRecall(closing))).toEqual({ revision: 2 });
    expect(await closeRecall(closing)).toMatchObject({ refusal: { because: 'frozen' } });
    const found = await findRecall(asProgram(db), request.recallId);
    expect(found?.closed).toMatchObject({ by: lead.name, with: manager.name });
    expect(found?.balance?.received).toBeGreaterThan(0);
    expect(found?.holds.every(({ heldStill }) => heldStill)).toBe(true);
    await expect(db.tx(async (write) => write.update(recalls).set({ reason: 'another' }))).rejects.toThrow(
      /never changes/,
    );
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('shows whoever counts a set blind no figure of what lies in it, in trace, recall or report', async () => {
    const { db, lead, one } = await hospital();
    const of = mixedLot(db);
    const technician = one('technician');
    const request = asking(db, lead, of);
    done(await openRecall(request));
    const reach = await recallReach(db.read, of);
    const [counted, other] = reach?.sets ?? [];
    if (!counted || !other) throw new Error('the lot lies in several sets');
    await db.tx(async (write) => {
      write.run(sql`INSERT INTO bench_counts (id, set_id, turn_id, version_id, purpose, person_id, base_revision, began_at)
        SELECT 'count_blindrecall', one.id, (SELECT id FROM turns WHERE set_id = one.id ORDER BY number DESC LIMIT 1),
          one.version_id, 'check', ${technician.id}, one.revision, ${AT} FROM sets one WHERE one.id = ${counted.setId}`);
    });
    const blind = readAs(db, technician);
    const seeing = readAs(db, one('technician', 1));
    const shown = await findRecall(blind, request.recallId);
    const open = await findRecall(seeing, request.recallId);
    for (const found of [shown, open]) expect(found?.reach.sets.length).toBe(reach?.sets.length);
    const piecesOf = (found: typeof shown, set: string) => [
      ...(found?.reach.sets ?? []).filter(({ setId: id }) => id === set).map(({ pieces }) => pieces),
      ...(found?.found.sets ?? []).filter(({ setId: id }) => id === set).map(({ pieces }) => pieces),
      ...(found?.holds ?? []).filter(({ setId: id }) => id === set).map(({ pieces }) => pieces),
    ];
    expect(piecesOf(shown, counted.setId)).toEqual([null, null, null]);
    expect(piecesOf(shown, other.setId)).toEqual([other.pieces, other.pieces, other.pieces]);
    expect(piecesOf(open, counted.setId)).toEqual([counted.pieces, counted.pieces, counted.pieces]);
    // the balance would tell it by subtraction
    expect(shown?.balance).toBeNull();
    expect(open?.balance).not.toBeNull();
    const lot = await traceLot(blind, of.itemId, of.lot);
    expect(lot?.trace.slots.find(({ setId: id }) => id === counted.setId)?.bounds).toBeNull();
    expect(lot?.trace.slots.find(({ setId: id }) => id === other.setId)?.bounds).not.toBeNull();
    expect(lot?.trace.balance).toBeNull();
    expect((await traceLot(seeing, of.itemId, of.lot))?.trace.balance).not.toBeNull();
    // nor do the cases it went to: which they are is told, and neither how many pieces nor why
    const went = new Set(
      (
        db.read.all(sql`
          SELECT case_id AS id FROM case_picks WHERE set_id = ${counted.setId} AND issued_at IS NOT NULL
          UNION SELECT case_id FROM piece_moves WHERE from_set_id = ${counted.setId} AND case_id IS NOT NULL`) as {
          id: string;
        }[]
      ).map(({ id }) => id),
    );
    const asItem = { kind: 'item', itemId: of.itemId } as const;
    const seen = async (as: typeof blind) => [
      ...((await traceLot(as, of.itemId, of.lot))?.cases.rows ?? []),
      ...((await traceReach(as, asItem))?.cases.rows ?? []),
      ...((await findRecall(as, request.recallId, { all: AS_LOOKED_AT }))?.cases.rows ?? []),
      ...((await recallCases(as, request.recallId, FIRST_CASES))?.rows ?? []),
    ];
    const rows = await seen(blind);
    expect(rows.filter(({ id }) => went.has(id)).length).toBeGreaterThan(3);
    for (const { id, lo, hi, reasons } of rows) {
      if (!went.has(id))
        expect(typeof lo === 'number' && typeof hi === 'number' && reasons.length > 0).toBe(true);
      else expect([lo, hi, reasons]).toEqual([null, null, [recallWords.caseBlind]]);
    }
    expect((await seen(seeing)).filter(({ lo }) => lo === null)).toEqual([]);
    // and no other list of the cases goes with the trace, where their figures would stand
    expect(Object.keys(lot?.trace ?? {}).sort()).toEqual([
      'balance',
      'firstHereAt',
      'heaps',
      'inDoubt',
      'lot',
      'slots',
    ]);
    // of a case backward nothing of the set is there, and that is said
    const [last] = [...went].sort().reverse();
    const [back, whole] = [await traceCase(blind, last ?? ''), await traceCase(seeing, last ?? '')];
    expect(back?.pieces.filter(({ setId: id }) => id === counted.setId)).toEqual([]);
    expect(back?.hidden.map(({ id }) => id)).toEqual([counted.setId]);
    expect(whole?.hidden).toEqual([]);
    // a case is left out of what cases cost
    const period = { from: plainDate.parse('2025-01-15'), until: plainDate.parse('2026-01-14') };
    const [less, all] = [await caseCostsSeen(blind, period, AT), await caseCostsSeen(seeing, period, AT)];
    expect(all.cases.filter(({ caseId }) => went.has(caseId)).length).toBe(less.hidden);
    expect(less.hidden).toBeGreaterThan(3);
    expect(less.cases).toEqual(all.cases.filter(({ caseId }) => !went.has(caseId)));
    expect(all.hidden).toBe(0);
    const item = await traceReach(blind, asItem);
    expect(item?.reach.sets.find(({ setId: id }) => id === counted.setId)?.pieces).toBeNull();
  });

  it('of an item reaches every set with pieces of it, by whichever version of its configuration they lie there', async () => {
    const { db } = await hospital();
    const [slot] = db.read.all(sql`
      SELECT held.set_id AS setId, line.item_id AS itemId, line.version_id AS versionId,
          (SELECT id FROM configuration_versions other WHERE other.id <> line.version_id LIMIT 1) AS other
        FROM slot_holdings held JOIN configuration_lines line ON line.id = held.line_id
        JOIN sets one ON one.id = held.set_id AND one.version_id = line.version_id
        WHERE held.quantity > 0 ORDER BY 1, 2 LIMIT 1`) as { setId: string; itemId: string; other: string }[];
    if (!slot) throw new Error('sets have pieces');
    const of = { kind: 'item', itemId: itemId.parse(slot.itemId) } as const;
    const before = await recallReach(db.read, of);
    const held = before?.sets.find(({ setId: id }) => id === slot.setId);
    expect(held?.pieces).toBeGreaterThan(0);
    // the set follows another version; what lies in it lies there still by the one before
    await db.tx(async (write) => {
      write.run(sql`UPDATE sets SET version_id = ${slot.other} WHERE id = ${slot.setId}`);
    });
    const after = await recallReach(db.read, of);
    expect(after?.sets.find(({ setId: id }) => id === slot.setId)).toEqual(held);
  });

  it('of an item or a set names every case once over its pages, as does the recall of it, and its file names them all', async () => {
    const { db, lead } = await hospital();
    const [most] = db.read.all(sql`SELECT item_id AS itemId FROM piece_moves WHERE act = 'implanted'
      GROUP BY item_id ORDER BY count(DISTINCT case_id) DESC, item_id LIMIT 1`) as { itemId: string }[];
    const of = { kind: 'item', itemId: itemId.parse(most?.itemId) } as const;
    const whole = (await recallReach(db.read, of))?.cases.map(({ caseId }) => caseId).sort() ?? [];
    expect(whole.length).toBeGreaterThan(CASES_A_PAGE);
    const request = asking(db, lead, of);
    done(await openRecall(request));
    const places = {
      trace: async (asked: CasePageAsked) => (await traceReach(asProgram(db), of, asked))?.cases,
      recall: async (asked: CasePageAsked) =>
        (await findRecall(asProgram(db), request.recallId, asked))?.cases,
      served: (asked: CasePageAsked) => recallCases(asProgram(db), request.recallId, asked),
    };
    for (const order of ['first', 'reference'] as const)
      for (const [place, ask] of Object.entries(places)) {
        const pages = Math.ceil(whole.length / CASES_A_PAGE);
        const rows: string[] = [];
        for (let page = 1; page <= pages; page += 1) {
          const seen = await ask({ order, isDescending: false, page });
          expect(seen?.counts, place).toEqual({
            total: whole.length,
            confirmed: whole.length,
            possible: 0,
            excluded: 0,
          });
          expect(seen?.rows.length, place).toBeLessThanOrEqual(CASES_A_PAGE);
          rows.push(...(seen?.rows ?? []).map((row) => (order === 'first' ? row.date : row.reference)));
          if (page === pages) expect(seen?.rows.length).toBe(whole.length - CASES_A_PAGE * (pages - 1));
        }
        expect(rows).toHaveLength(whole.length);
        // the newest first; by reference from the first on
        const inOrder = [...rows].sort(new Intl.Collator('en-GB', { numeric: true }).compare);
        expect(rows, `${place} ${order}`).toEqual(order === 'first' ? inOrder.reverse() : inOrder);
      }
    const all = await findRecall(asProgram(db), request.recallId, { all: AS_LOOKED_AT });
    expect(all?.cases.rows.map(({ id }) => id).sort()).toEqual(whole);
    if (!all) throw new Error('it was opened');
    const file = csvOf(recallCaseColumns(all), all.cases.rows);
    for (const { reference } of all.cases.rows) expect(file.split(reference)).toHaveLength(2);
  });

  it('stands in a list of those open, and in pages of those closed, each once', async () => {
    const { db, lead } = await hospital();
    await db.tx(async (write) => {
      for (let n = 1; n <= 47; n += 1)
        await write.insert(recalls).values({
          id: `recall_listed-${n}`,
          number: `R-1${String(n).padStart(4, '0')}`,
          kind: 'set',
          setId: 'set_sfs-02',
          reason: 'Rehearsed every month.',
          noticeReference: null,
          isRehearsal: true,
          found: { cases: [], sets: [], heaps: [], unknownLots: [], contradictions: [] },
          openedBy: lead.id,
          openedAt: AT,
          ...(n % 9 === 0
            ? {}
            : { closedAt: AT, closedBy: lead.id, closedWith: 'person_gwen-sallis', closedBecause: 'Done.' }),
          revision: 1,
        });
    });
    const open = await listOpenRecalls(asProgram(db));
    expect(open.map(({ number }) => number).sort()).toEqual([
      'R-00001',
      ...[9, 18, 27, 36, 45].map((n) => `R-100${String(n).padStart(2, '0')}`),
    ]);
    const seen: string[] = [];
    let olderThan: string | null = null;
    let pages = 0;
    do {
      const page: ClosedRecalls = await listClosedRecalls(asProgram(db), olderThan);
      seen.push(...page.recalls.map(({ number }) => number));
      olderThan = page.olderThan;
      pages += 1;
    } while (olderThan !== null);
    expect(pages).toBe(3);
    expect(seen).toEqual([...seen].sort().reverse());
    expect(new Set(seen).size).toBe(42);
    expect(seen.length).toBe(42);
  });

  it('is opened with a reason, by those who may, and never with what looks like a patient’s data', async () => {
    const { db, lead, one } = await hospital();
    const of = mixedLot(db);
    const before = await db.read.select().from(recalls);
    expect(await openRecall({ ...asking(db, lead, of), reason: '  ' })).toMatchObject({
      refusal: { because: 'invalid', problems: [{ path: ['reason'], code: 'needed' }] },
    });
    expect(
      await openRecall({ ...asking(db, lead, of), reason: 'NHS 943 476 5919, born 12/03/1961' }),
    ).toMatchObject({
      refusal: {
        because: 'invalid',
        problems: expect.arrayContaining([expect.objectContaining({ code: 'looks-like-patient-data' })]),
      },
    });
    expect(await openRecall(asking(db, one('technician'), of))).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
    expect(await openRecall(asking(db, lead, { ...of, lot: 'NEVER-SEEN' }))).toMatchObject({
      refusal: { because: 'notFound' },
    });
    expect(await db.read.select().from(recalls)).toEqual(before);
  });
});
