import { and, eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { packSet } from '@/db/operations/packs/pack-set';
import { askDecision } from '@/db/operations/short/ask-decision';
import { decideShort } from '@/db/operations/short/decide-short';
import { returnToBench } from '@/db/operations/short/return-to-bench';
import { listPeople } from '@/db/queries/people';
import { promisedPouches } from '@/db/queries/short/decisions';
import { openDecisions } from '@/db/queries/short/screen';
import { shortForCase } from '@/db/queries/short/shortForCase';
import { loadStore } from '@/db/queries/store';
import { cases, ledger, notices, packs, refillJobs, setPromises, shortDecisions, stock } from '@/db/schema';
import type { SetId } from '@/lib/identity/ids';
import { availableFor } from '@/lib/kits/availability';
import { packShort } from '@/lib/packs/pack';
import { plainDate } from '@/lib/quantities/plainDate';
import { promiseTimes } from '@/lib/theatre/promise';
import { attested, benchHospital, counterOfIds, countWhole, NOW, setRow } from '../packs/atBench';

const newId = counterOfIds();
type Hospital = Awaited<ReturnType<typeof benchHospital>>;
const LATER = '2026-01-14T07:01:00.000Z';

/** CLO-02 on the bench, counted with these found, and set aside for a decision. */
async function waiting(hospital: Hospital, found: Record<string, number>): Promise<void> {
  const { db, technician } = hospital;
  await countWhole(db, 'CLO-02', found, { by: technician });
  const { revision } = await setRow(db, 'CLO-02');
  const request = { db, now: NOW, newId, person: technician, setId: 'set_clo-02' as SetId };
  const asked = await askDecision({ ...request, baseRevision: revision });
  if (!asked.ok) throw new Error(asked.refusal.problems[0]?.message);
}

async function decide(
  { db, technician }: Hospital,
  approvals: Parameters<typeof decideShort>[0]['approvals'],
  change: Record<string, unknown> = {},
  now = NOW,
) {
  const { revision } = await setRow(db, 'CLO-02');
  const entry = {
    id: 'decision_test',
    setId: 'set_clo-02',
    baseRevision: revision,
    reason: 'no other set is back before the case',
    caseId: null,
    substitutes: [],
    ...change,
  };
  return decideShort({ db, now, person: technician, entry, approvals });
}

const codesOf = (outcome: Awaited<ReturnType<typeof decide>>) =>
  outcome.ok ? [] : outcome.refusal.problems.map(({ code }) => code);

async function pack({ db, technician }: Hospital, now = NOW) {
  const { revision } = await setRow(db, 'CLO-02');
  const entry = {
    id: 'pack_short',
    setId: 'set_clo-02',
    baseRevision: revision,
    barrier: 'wrap',
    weighedGrams: null,
    shortReason: null,
    massReason: null,
  };
  const attestation = attested(technician, 'iPacked', now);
  return packSet({ db, now, newId, person: technician, entry, attestation });
}

/** A case of the surgeon that is still to come, by the demo's own record. */
async function caseOf({ db, surgeon }: Hospital) {
  const rows = await db.read.select().from(cases).where(eq(cases.surgeonId, surgeon.id));
  const found = rows
    .filter(({ endsAt }) => endsAt > NOW)
    .sort((a, b) => a.startsAt.localeCompare(b.startsAt))[0];
  if (!found) throw new Error('the surgeon has a case to come');
  return found;
}

const BIT = { 'SF-B25-125': 0 };
/** Class 1 of CLO-02: without it the step stops. */
const LIMITS_OF_CLASS_1 = { 'SF-S-T35': 0, 'SF-S-T27': 0 };

async function pouchFor({ db }: Hospital, itemId: string) {
  const [row] = await db.read
    .select()
    .from(stock)
    .where(and(eq(stock.itemId, itemId), eq(stock.form, 'pouch')));
  if (!row) throw new Error(`the demo has a pouch of ${itemId}`);
  return row;
}

async function substitute(hospital: Hospital) {
  const { lines } = await lineOf(hospital);
  const row = await pouchFor(hospital, 'item_cr-b25-110');
  return [{ lineId: lines, itemId: row.itemId, from: { kind: 'pouch', stockId: row.id } }];
}

async function lineOf({ db }: Hospital) {
  const { heldLines } = await import('@/db/queries/short/facts');
  const line = (await heldLines(db.read, await setRow(db, 'CLO-02'))).find(
    ({ itemId }) => itemId === 'item_sf-b25-125',
  );
  if (!line) throw new Error('CLO-02 holds the bit');
  return { lines: line.id };
}

describe('class 2', () => {
  it('goes when the decontamination lead stands for it and the named substitute travels with it', async () => {
    const hospital = await benchHospital();
    const { db, lead } = hospital;
    await waiting(hospital, BIT);
    const promised = await promisedPouches(db.read, NOW);
    const approvals = [{ as: 'decontaminationLead' as const, attestation: attested(lead, 'iSendItShort') }];
    expect(codesOf(await decide(hospital, approvals))).toEqual(['stand-ins-needed']);
    const substitutes = await substitute(hospital);
    expect(codesOf(await decide(hospital, approvals, { substitutes, reason: ' ' }))).toEqual(['needed']);
    const decided = await decide(hospital, approvals, { substitutes });
    expect(codesOf(decided)).toEqual([]);
    // the pouch is promised to this set, and to no other
    const pouch = await pouchFor(hospital, 'item_cr-b25-110');
    const one = (promised.get(pouch.id as never) ?? 0) + 1;
    expect(await promisedPouches(db.read, NOW)).toEqual(new Map([...promised, [pouch.id, one]]));
    const packed = await pack(hospital);
    expect(packed.ok).toBe(true);
    const [row] = await db.read.select().from(packs).where(eq(packs.id, 'pack_short'));
    expect(row).toMatchObject({ decisionId: 'decision_test', forCaseId: null });
    expect(packShort.parse(row?.short).substitutes).toHaveLength(1);
    const jobs = await db.read.select().from(refillJobs).where(eq(refillJobs.setId, 'set_clo-02'));
    expect(jobs.map(({ itemId }) => itemId)).toEqual(['item_sf-b25-125']);
    const [entry] = await db.read.select().from(ledger).where(eq(ledger.action, 'send-short'));
    expect(entry?.detail).toMatchObject({
      kind: 'withSubstitute',
      attested: [{ personId: lead.id, meaning: 'iSendItShort' }],
    });
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('waits while nobody, or somebody who may not, stands for it', async () => {
    const hospital = await benchHospital();
    await waiting(hospital, BIT);
    const substitutes = await substitute(hospital);
    expect(codesOf(await decide(hospital, [], { substitutes }))).toEqual(['approver-needed']);
    const by = (
      person: typeof hospital.lead,
      meaning: 'iSendItShort' | 'iPacked' = 'iSendItShort',
      at = NOW,
    ) => [{ as: 'decontaminationLead' as const, attestation: attested(person, meaning, at) }];
    expect(codesOf(await decide(hospital, by(hospital.technician), { substitutes }))).toEqual(['wrong-role']);
    expect(codesOf(await decide(hospital, by(hospital.lead, 'iPacked'), { substitutes }))).toEqual([
      'not-proven',
    ]);
    const old = by(hospital.lead, 'iSendItShort', '2026-01-14T06:57:00.000Z');
    expect(codesOf(await decide(hospital, old, { substitutes }))).toEqual(['not-proven']);
    expect((await pack(hospital)).ok).toBe(false);
  });

  it('a pouch held after the decision no longer stands in', async () => {
    const hospital = await benchHospital();
    const { db, lead } = hospital;
    await waiting(hospital, BIT);
    const substitutes = await substitute(hospital);
    await decide(hospital, [{ as: 'decontaminationLead', attestation: attested(lead, 'iSendItShort') }], {
      substitutes,
    });
    await db.tx((write) =>
      write.update(stock).set({ heldBecause: 'recall' }).where(eq(stock.itemId, 'item_cr-b25-110')),
    );
    const refused = await pack(hospital);
    expect(refused.ok === false && refused.refusal.problems[0]?.message).toMatch(/no longer at hand/);
  });
});

describe('asked for a decision', () => {
  const told = async ({ db }: Hospital) =>
    (await db.read.select().from(notices))
      .filter(({ kind }) => kind === 'shortDecisionAsked')
      .map(({ personId, href }) => ({ personId, href }));
  const href = '/sets/set_clo-02/short';
  const withRole = async ({ db }: Hospital, wanted: string) =>
    (await listPeople(db)).filter(({ role }) => role === wanted).map(({ id }) => ({ personId: id, href }));
  const byId = (a: { personId: string }, b: { personId: string }) => a.personId.localeCompare(b.personId);

  it('for class 2 the decontamination leads are told, and nobody else', async () => {
    const hospital = await benchHospital();
    await waiting(hospital, BIT);
    const leads = await withRole(hospital, 'decontaminationLead');
    expect(leads.length).toBeGreaterThan(0);
    expect((await told(hospital)).sort(byId)).toEqual(leads.sort(byId));
  });

  it('for class 1 the theatre managers are told, and the surgeon of a case it is promised to', async () => {
    const hospital = await benchHospital();
    const { db, surgeon } = hospital;
    await db.tx((write) => write.delete(setPromises).where(eq(setPromises.setId, 'set_clo-02')));
    const booked = await caseOf(hospital);
    await db.tx((write) =>
      write.insert(setPromises).values({
        id: 'promise_test',
        setId: 'set_clo-02',
        caseId: booked.id,
        ...promiseTimes(booked, 60, 345),
        chosenBy: 'person',
      }),
    );
    await waiting(hospital, LIMITS_OF_CLASS_1);
    const managers = await withRole(hospital, 'theatreManager');
    expect(managers.length).toBeGreaterThan(0);
    const expected = [...managers, { personId: surgeon.id, href }];
    expect((await told(hospital)).sort(byId)).toEqual(expect.arrayContaining(expected));
    const otherSurgeons = (await withRole(hospital, 'surgeon')).filter(
      ({ personId }) => personId !== surgeon.id,
    );
    for (const other of otherSurgeons) expect(await told(hospital)).not.toContainEqual(other);
  });
});

describe('class 1', () => {
  const both = ({ theatreLead, surgeon }: Hospital) => [
    { as: 'theatreLead' as const, attestation: attested(theatreLead, 'iSendItShort') },
    { as: 'operatingSurgeon' as const, attestation: attested(surgeon, 'iSendItShort') },
  ];

  it('goes for one named case when theatre lead and its surgeon stand for it, and serves no other', async () => {
    const hospital = await benchHospital();
    const { db } = hospital;
    await waiting(hospital, LIMITS_OF_CLASS_1);
    const booked = await caseOf(hospital);
    expect(codesOf(await decide(hospital, both(hospital)))).toEqual(['needed']);
    const decided = await decide(hospital, both(hospital), { caseId: booked.id });
    expect(codesOf(decided)).toEqual([]);
    const [decision] = await db.read
      .select()
      .from(shortDecisions)
      .where(eq(shortDecisions.id, 'decision_test'));
    expect(decision).toMatchObject({
      kind: 'oneCase',
      caseId: booked.id,
      lapsesAt: booked.endsAt,
      lapsedAt: null,
    });
    expect((await pack(hospital)).ok).toBe(true);
    const [row] = await db.read.select().from(packs).where(eq(packs.id, 'pack_short'));
    expect(row?.forCaseId).toBe(booked.id);
    const said = await shortForCase(db, booked.id, LATER);
    expect(said).toMatchObject([{ code: 'CLO-02', until: booked.endsAt, lapses: [] }]);
    expect(said[0]?.lines).toEqual(packShort.parse(row?.short).lines);
    expect(await shortForCase(db, 'case_lm-26-other', LATER)).toEqual([]);
    // in the kit of any other case it can't be had
    const others = await loadStore(db, 'case_lm-26-other');
    const own = await loadStore(db, booked.id);
    const on = plainDate.parse(booked.caseDate);
    const why = (store: typeof own) =>
      availableFor(store, on).otherSets.find(({ set }) => set.code === 'CLO-02')?.because.kind;
    expect([why(others), why(own)]).toEqual(['shortForOneCase', 'notInStore']);
  });

  it.each([
    { who: 'the theatre lead alone', as: ['theatreLead'], codes: ['approver-needed'] },
    { who: 'the surgeon alone', as: ['operatingSurgeon'], codes: ['approver-needed'] },
    { who: 'nobody', as: [], codes: ['approver-needed', 'approver-needed'] },
  ])('waits while $who stands for it', async ({ as, codes }) => {
    const hospital = await benchHospital();
    await waiting(hospital, LIMITS_OF_CLASS_1);
    const booked = await caseOf(hospital);
    const approvals = both(hospital).filter((one) => as.includes(one.as));
    expect(codesOf(await decide(hospital, approvals, { caseId: booked.id }))).toEqual(codes);
  });

  it('another surgeon, the same person twice, and a case that is over are each refused, all at once', async () => {
    const hospital = await benchHospital();
    const { otherSurgeon, theatreLead } = hospital;
    await waiting(hospital, LIMITS_OF_CLASS_1);
    const booked = await caseOf(hospital);
    const stranger = [
      { as: 'theatreLead' as const, attestation: attested(theatreLead, 'iSendItShort') },
      { as: 'operatingSurgeon' as const, attestation: attested(otherSurgeon, 'iSendItShort') },
    ];
    expect(codesOf(await decide(hospital, stranger, { caseId: booked.id }))).toEqual(['not-the-surgeon']);
    const twice = [
      { as: 'theatreLead' as const, attestation: attested(theatreLead, 'iSendItShort') },
      { as: 'operatingSurgeon' as const, attestation: attested(theatreLead, 'iSendItShort') },
    ];
    expect(codesOf(await decide(hospital, twice, { caseId: booked.id, reason: '' }))).toEqual([
      'needed',
      'same-person',
      'wrong-role',
      'not-the-surgeon',
    ]);
    const after = new Date(Date.parse(booked.endsAt) + 60_000).toISOString();
    const late = both(hospital).map((one) => ({ ...one, attestation: { ...one.attestation, at: after } }));
    expect(codesOf(await decide(hospital, late, { caseId: booked.id }, after))).toEqual(['case-over']);
  });

  it.each([
    {
      why: 'the case is over',
      change: { endsAt: '2026-01-14T07:00:30.000Z', startsAt: '2026-01-14T06:00:00.000Z' },
    },
    { why: 'another surgeon operates', change: { surgeonId: 'person_tobias-wray' } },
  ])('lapses when $why: it can’t be packed, and the lapse is on record', async ({ change }) => {
    const hospital = await benchHospital();
    const { db } = hospital;
    await waiting(hospital, LIMITS_OF_CLASS_1);
    const booked = await caseOf(hospital);
    await decide(hospital, both(hospital), { caseId: booked.id });
    await db.tx(async (write) => {
      // a case is not moved from under the promises of sets
      await write.delete(setPromises).where(eq(setPromises.caseId, booked.id));
      await write.update(cases).set(change).where(eq(cases.id, booked.id));
    });
    // read before anything was written: it is worked out
    expect(
      (await openDecisions(db, LATER)).find(({ code }) => code === 'CLO-02')?.decision?.lapses,
    ).toHaveLength(1);
    const refused = await pack(hospital, LATER);
    expect(refused.ok === false && refused.refusal.problems[0]?.message).toMatch(/lapsed/);
    const [decision] = await db.read
      .select()
      .from(shortDecisions)
      .where(eq(shortDecisions.id, 'decision_test'));
    expect(decision?.lapsedAt).toBe(LATER);
    expect(await db.read.select().from(ledger).where(eq(ledger.action, 'lapse-short-decision'))).toHaveLength(
      1,
    );
  });
});

describe('asking', () => {
  it('is refused where nobody has to decide, and where nobody can', async () => {
    const hospital = await benchHospital();
    await expect(waiting(hospital, {})).rejects.toThrow(/Nothing is short/);
    await expect(waiting(hospital, { 'PT-W-16-150': 0 })).rejects.toThrow(/Nobody has to decide|It waits/);
    await expect(waiting(hospital, { 'SF-B25-125': 5 })).rejects.toThrow(/can’t go as it is/);
  });

  it('is taken back to the bench, and what was decided in an earlier turn stands for nothing', async () => {
    const hospital = await benchHospital();
    const { db, technician } = hospital;
    await waiting(hospital, BIT);
    const { revision } = await setRow(db, 'CLO-02');
    const request = { db, now: NOW, newId, person: technician, setId: 'set_clo-02' as SetId };
    expect((await returnToBench({ ...request, baseRevision: revision })).ok).toBe(true);
    expect((await setRow(db, 'CLO-02')).step).toBe('onBench');
  });
});
