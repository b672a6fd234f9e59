import { and, eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { acceptLoad } from '@/db/operations/loads/accept-load';
import { addIndicator } from '@/db/operations/loads/add-indicator';
import { importCycle } from '@/db/operations/loads/import-cycle';
import { liftPouchHold } from '@/db/operations/loads/lift-pouch-hold';
import { readIndicator } from '@/db/operations/loads/read-indicator';
import { rejectLoad } from '@/db/operations/loads/reject-load';
import { unloadPack } from '@/db/operations/loads/unload-pack';
import { liftHold } from '@/db/operations/turns/lift-hold';
import { sendToTheatre } from '@/db/operations/turns/send-to-theatre';
import { loadStore } from '@/db/queries/store';
import {
  cases,
  ledger,
  loadIndicators,
  loadPacks,
  loads,
  packs,
  packsInDoubt,
  settings,
  stock,
} from '@/db/schema';
import { caseId, indicatorId, type LoadId, packId, placeId, setId } from '@/lib/identity/ids';
import { cycleFile } from '../../fixtures/cycleFile';
import {
  attested,
  closedPouch,
  done,
  type LoadHospital,
  loadHospital,
  loadIn,
  lookAtAll,
  NOW,
  newId,
  passIndicators,
  ranLoad,
  setCoded,
} from './loadWorld';

const later = (minutes: number) => new Date(Date.parse(NOW) + minutes * 60_000).toISOString();

function accepting({ db, lead }: LoadHospital, loadId: LoadId, now = NOW) {
  return {
    db,
    now,
    newId,
    person: lead,
    loadId,
    baseRevision: null,
    reason: '',
    setsPlaceId: placeId.parse('place_store-a'),
    pouchesPlaceId: placeId.parse('place_pouch-1'),
    exception: null,
    attestation: attested(lead, 'iAcceptThisLoad', now),
  };
}

const rejecting = ({ db, technician }: LoadHospital, loadId: LoadId, now = NOW) => ({
  db,
  now,
  newId,
  person: technician,
  loadId,
  baseRevision: null,
  reason: 'The printed record shows a pressure fault.',
  setsGo: 'held' as const,
  attestation: attested(technician, 'iRejectThisLoad', now),
});

const packAt = async ({ db }: LoadHospital, id: string) =>
  (await db.read.select().from(packs).where(eq(packs.id, id)))[0];
const shelfOf = async (hospital: LoadHospital, id: string) => {
  const stockId = (await packAt(hospital, id))?.stockId;
  if (!stockId) return null;
  return (await hospital.db.read.select().from(stock).where(eq(stock.id, stockId)))[0] ?? null;
};

describe('a load is accepted', () => {
  it('by a person who proved it, never otherwise', async () => {
    const hospital = await loadHospital();
    const id = await ranLoad(hospital, {
      steriliser: 2,
      packs: [await closedPouch(hospital.db, hospital.technician, 'driver')],
    });
    const asked = accepting(hospital, id);
    const { technician, lead } = hospital;
    for (const wrong of [
      { ...asked, attestation: attested(lead, 'iApprove') },
      { ...asked, attestation: attested(technician, 'iAcceptThisLoad') },
      { ...asked, attestation: attested(lead, 'iAcceptThisLoad', '2026-01-14T06:30:00.000Z') },
      { ...asked, person: technician, attestation: attested(technician, 'iAcceptThisLoad') },
    ])
      expect(await acceptLoad(wrong)).toMatchObject({ ok: false, refusal: { because: 'notPermitted' } });
    expect(done(await acceptLoad(asked)).stored).toBe(1);
    const [entry] = await hospital.db.read.select().from(ledger).where(eq(ledger.action, 'accept-load'));
    expect(entry?.detail).toMatchObject({
      attested: { meaning: 'iAcceptThisLoad', method: 'password', at: NOW },
    });
    expect(await acceptLoad(asked)).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
  });

  it('sets go to their place with a use-by, pouches onto the shelf; what was wet does not', async () => {
    const hospital = await loadHospital();
    const { db, technician } = hospital;
    await db.tx((write) =>
      write
        .insert(settings)
        .values({ key: 'loads', value: { implantsAwaitBiological: false } })
        .onConflictDoNothing(),
    );
    const set = await setCoded(db, 'DFB-03');
    const [dry, wet] = [
      await closedPouch(db, technician, 'driver'),
      await closedPouch(db, technician, 'driver'),
    ];
    const id = await ranLoad(hospital, { steriliser: 2, packs: [packId.parse(set.packId), dry, wet] });
    done(
      await unloadPack({
        db,
        now: NOW,
        newId,
        person: technician,
        loadId: id,
        baseRevision: null,
        packId: wet,
        as: 'wet',
      }),
    );
    done(
      await importCycle({
        db,
        now: NOW,
        newId,
        person: technician,
        loadId: id,
        baseRevision: null,
        text: cycleFile(),
        fileName: null,
        dryRun: false,
      }),
    );
    expect(done(await acceptLoad(accepting(hospital, id))).stored).toBe(2);
    // 180 days after 14 January 2026, by calendar
    expect(await setCoded(db, 'DFB-03')).toMatchObject({
      step: 'inSterileStore',
      placeId: 'place_store-a',
      useBy: '2026-07-13',
      readyAt: NOW,
    });
    expect(await shelfOf(hospital, dry)).toMatchObject({
      form: 'pouch',
      lot: 'LOT-7',
      quantity: 1,
      placeId: 'place_pouch-1',
      useBy: '2026-07-13',
      heldBecause: null,
    });
    expect(await packAt(hospital, wet)).toMatchObject({ state: 'undone', stockId: null });
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('event-related sterility prints no use-by', async () => {
    const hospital = await loadHospital();
    await hospital.db.tx((write) =>
      write.insert(settings).values({ key: 'sterility', value: { policy: 'eventRelated' } }),
    );
    const pouch = await closedPouch(hospital.db, hospital.technician, 'driver');
    done(await acceptLoad(accepting(hospital, await ranLoad(hospital, { steriliser: 2, packs: [pouch] }))));
    expect(await shelfOf(hospital, pouch)).toMatchObject({ useBy: null });
  });

  it('what stops it is said at once and nothing is accepted; cautions ask for a reason; a place is asked for', async () => {
    const hospital = await loadHospital();
    const { db, technician } = hospital;
    const awaiting = await loadIn(db, 'awaitingAcceptance');
    const answer = await acceptLoad(accepting(hospital, awaiting.id));
    if (answer.ok) throw new Error('it is refused');
    expect(answer.refusal.problems.map(({ code }) => code)).toEqual([
      'notLookedAt',
      'implantsAwaitBiological',
    ]);
    const id = await ranLoad(hospital, {
      steriliser: 2,
      packs: [await closedPouch(db, technician, 'driver')],
    });
    done(
      await addIndicator({
        db,
        now: NOW,
        newId,
        person: technician,
        loadId: id,
        baseRevision: null,
        entry: { kind: 'chemical', lot: '', useBy: '', position: '', result: 'passed' },
      }),
    );
    expect(await acceptLoad({ ...accepting(hospital, id), pouchesPlaceId: null })).toMatchObject({
      ok: false,
      refusal: { problems: [{ path: ['reason'] }, { path: ['pouchesPlaceId'] }] },
    });
    done(await acceptLoad({ ...accepting(hospital, id), reason: 'Lot read from the box beside it.' }));
  });
});

describe('implants wait for the biological result', () => {
  async function withImplants() {
    const hospital = await loadHospital();
    const { db, technician, people } = hospital;
    const [mine, other] = [
      await closedPouch(db, technician, 'screw'),
      await closedPouch(db, technician, 'plate'),
    ];
    const id = await ranLoad(hospital, { steriliser: 2, packs: [mine, other] });
    const indicator = done(
      await addIndicator({
        db,
        now: NOW,
        newId,
        person: technician,
        loadId: id,
        baseRevision: null,
        entry: { kind: 'biological', lot: 'B-9', useBy: '2026-09-01', position: '', result: 'pending' },
      }),
    );
    const booked = (await db.read.select().from(cases)).find(({ endsAt }) => endsAt > later(60));
    const surgeon = people.find((person) => person.id === booked?.surgeonId);
    if (!booked || !surgeon) throw new Error('the demo has a case to come');
    const exception = {
      caseId: caseId.parse(booked.id),
      packIds: [mine],
      reason: 'Open fracture; no other screw of this length is in the house.',
      surgeon,
      attestation: attested(surgeon, 'iApprove'),
    };
    return { ...hospital, id, mine, other, exception, surgeon, indicator: indicatorId.parse(indicator.id) };
  }

  it('the load is not accepted before, and is after', async () => {
    const world = await withImplants();
    const { db, id, indicator, technician } = world;
    expect(await acceptLoad(accepting(world, id))).toMatchObject({
      ok: false,
      refusal: { problems: [{ code: 'implantsAwaitBiological' }] },
    });
    done(
      await readIndicator({
        db,
        now: NOW,
        newId,
        person: technician,
        loadId: id,
        baseRevision: null,
        indicatorId: indicator,
        result: 'passed',
      }),
    );
    done(await acceptLoad(accepting(world, id)));
  });

  it('but by exception, for named packs and a named case, by lead and operating surgeon; the rest is held', async () => {
    const world = await withImplants();
    const { id, mine, other, exception, lead, one, people } = world;
    const asked = accepting(world, id);
    const another = people.find(
      ({ role, id: whose }) => role === 'surgeon' && whose !== exception.surgeon.id,
    );
    if (!another) throw new Error('the demo has two surgeons');
    const theatreManager = one('theatreManager');
    for (const [wrong, code] of [
      [{ ...exception, reason: ' ' }, 'needed'],
      [{ ...exception, packIds: [] }, 'packs'],
      [{ ...exception, caseId: caseId.parse('case_none') }, 'unknown'],
      [{ ...exception, surgeon: another, attestation: attested(another, 'iApprove') }, 'not-operating'],
      [
        { ...exception, surgeon: theatreManager, attestation: attested(theatreManager, 'iApprove') },
        'not-operating',
      ],
      [{ ...exception, surgeon: lead, attestation: attested(lead, 'iApprove') }, 'same-person'],
      [{ ...exception, attestation: attested(exception.surgeon, 'iChecked') }, 'not-proven'],
    ] as const) {
      const answer = await acceptLoad({ ...asked, exception: { ...wrong, packIds: [...wrong.packIds] } });
      expect(answer.ok ? [] : answer.refusal.problems.map((problem) => problem.code)).toContain(code);
    }
    done(await acceptLoad({ ...asked, exception }));
    expect(await packAt(world, mine)).toMatchObject({ state: 'sterile', forCaseId: exception.caseId });
    expect(await shelfOf(world, mine)).toMatchObject({ heldBecause: null });
    expect(await shelfOf(world, other)).toMatchObject({ heldBecause: 'loadUnknown' });
    const heap = (await packAt(world, mine))?.stockId;
    const kitPack = async (forCase: string | null) =>
      (await loadStore(world.db, forCase)).packs.find((pack) => pack.id === heap);
    expect(await kitPack(null)).toMatchObject({ letOutFor: { reference: expect.stringMatching(/^LM-/) } });
    expect(await kitPack(exception.caseId)).not.toHaveProperty('letOutFor');
    const [load] = await world.db.read.select().from(loads).where(eq(loads.id, id));
    expect(load?.exception).toMatchObject({
      reason: exception.reason,
      surgeon: { id: exception.surgeon.id },
      lead: { id: lead.id },
    });
    const [entry] = await world.db.read.select().from(ledger).where(eq(ledger.action, 'accept-load'));
    expect(entry?.detail).toMatchObject({
      attested: { meaning: 'iAcceptThisLoad' },
      alsoAttested: { personId: exception.surgeon.id, meaning: 'iApprove' },
    });
  });

  it('what the exception did not name is not let out by lifting its hold before the result has passed', async () => {
    const hospital = await loadHospital();
    const { db, technician, lead, people } = hospital;
    const awaiting = await loadIn(db, 'awaitingAcceptance');
    await passIndicators(hospital, awaiting.id);
    const biological = await db.read
      .select()
      .from(loadIndicators)
      .where(and(eq(loadIndicators.loadId, awaiting.id), eq(loadIndicators.kind, 'biological')));
    expect(biological.map(({ result }) => result)).toEqual(['pending']);
    const pouch = await closedPouch(db, technician, 'screw');
    await db.tx(async (write) => {
      const of = { state: 'awaitingAcceptance', loadId: awaiting.id };
      await write.update(packs).set(of).where(eq(packs.id, pouch));
      await write
        .insert(loadPacks)
        .values({ loadId: awaiting.id, packId: pouch, putInBy: technician.id, putInAt: NOW });
    });
    await lookAtAll(hospital, awaiting.id);
    const named = await setCoded(db, 'SFT-01');
    const other = await setCoded(db, 'PHT-L1');
    const booked = (await db.read.select().from(cases)).find(({ endsAt }) => endsAt > later(60));
    const surgeon = people.find(({ id }) => id === booked?.surgeonId);
    if (!booked || !surgeon) throw new Error('the demo has a case to come');
    const exception = {
      caseId: caseId.parse(booked.id),
      packIds: [packId.parse(named.packId ?? '')],
      reason: 'Open fracture; no other set of this kind is in the house.',
      surgeon,
      attestation: attested(surgeon, 'iApprove'),
    };
    done(await acceptLoad({ ...accepting(hospital, awaiting.id), exception }));
    expect(await setCoded(db, 'SFT-01')).toMatchObject({ step: 'inSterileStore' });
    const lift = async (to: 'inSterileStore' | 'washing', at: string) => {
      const set = await setCoded(db, 'PHT-L1');
      return liftHold({
        db,
        now: at,
        newId,
        person: lead,
        setId: setId.parse(set.id),
        baseRevision: set.revision,
        doneAt: null,
        workstationId: null,
        to,
        reason: 'The cycle was in order.',
        attestation: attested(lead, 'iLiftThisHold', at),
      });
    };
    expect(await setCoded(db, 'PHT-L1')).toMatchObject({ step: 'held', heldBecause: 'loadUnknown' });
    const early = await lift('inSterileStore', later(1));
    expect(early).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    expect(early.ok ? '' : early.refusal.problems[0]?.message).toContain(awaiting.number);
    const ofPouch = (at: string) =>
      liftPouchHold({
        db,
        now: at,
        person: lead,
        packId: pouch,
        reason: 'The cycle was in order.',
        attestation: attested(lead, 'iLiftThisHold', at),
      });
    expect(await ofPouch(later(1))).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    expect(await setCoded(db, 'PHT-L1')).toMatchObject({ step: 'held', packId: other.packId });
    done(
      await readIndicator({
        db,
        now: later(2),
        newId,
        person: technician,
        loadId: awaiting.id,
        baseRevision: null,
        indicatorId: indicatorId.parse(biological[0]?.id),
        result: 'passed',
      }),
    );
    // passed, it is still a person who lifts it
    expect(await setCoded(db, 'PHT-L1')).toMatchObject({ step: 'held' });
    done(await lift('inSterileStore', later(3)));
    expect(await setCoded(db, 'PHT-L1')).toMatchObject({ step: 'inSterileStore', packId: other.packId });
    done(await ofPouch(later(3)));
    expect(await shelfOf(hospital, pouch)).toMatchObject({ heldBecause: null });
  });

  it('a site that asks for no result lifts the hold of an implant as any other', async () => {
    for (const policy of ['asks', 'asksNot'] as const) {
      const world = await withImplants();
      const { db, id, other, exception, lead } = world;
      done(await acceptLoad({ ...accepting(world, id), exception }));
      if (policy === 'asksNot')
        await db.tx((write) =>
          write.insert(settings).values({ key: 'loads', value: { implantsAwaitBiological: false } }),
        );
      const lifted = await liftPouchHold({
        db,
        now: later(1),
        person: lead,
        packId: other,
        reason: 'The cycle was in order.',
        attestation: attested(lead, 'iLiftThisHold', later(1)),
      });
      expect(lifted.ok, policy).toBe(policy === 'asksNot');
    }
  });

  it('an exception sets nothing else aside', async () => {
    const world = await withImplants();
    const { db, technician, id, exception } = world;
    done(
      await addIndicator({
        db,
        now: NOW,
        newId,
        person: technician,
        loadId: id,
        baseRevision: null,
        entry: { kind: 'airRemoval', lot: 'A', useBy: '2027-01-01', position: '', result: 'failed' },
      }),
    );
    expect(await acceptLoad({ ...accepting(world, id), exception })).toMatchObject({
      ok: false,
      refusal: { problems: [{ code: 'indicatorFailed' }] },
    });
  });

  it('a result that fails afterwards rejects the load, holds what is here and says what went out', async () => {
    const world = await withImplants();
    const { db, technician, id, mine, other, exception, indicator } = world;
    done(await acceptLoad({ ...accepting(world, id), exception }));
    const shelf = await shelfOf(world, mine);
    await db.tx((write) =>
      write
        .update(stock)
        .set({ quantity: 0 })
        .where(eq(stock.id, shelf?.id ?? '')),
    );
    const read = done(
      await readIndicator({
        db,
        now: later(60),
        newId,
        person: technician,
        loadId: id,
        baseRevision: null,
        indicatorId: indicator,
        result: 'failed',
      }),
    );
    expect(read.held).toBeGreaterThanOrEqual(1);
    const doubted = await db.read.select().from(packsInDoubt).where(eq(packsInDoubt.failedLoadId, id));
    expect(doubted.find((one) => one.packId === mine)?.fateThen).toBe('used');
    expect(await shelfOf(world, other)).toMatchObject({ heldBecause: 'indicatorOrCycleFailed' });
    const [load] = await db.read.select().from(loads).where(eq(loads.id, id));
    expect(load).toMatchObject({
      state: 'rejected',
      decidedBy: technician.id,
      failure: { of: 'biological' },
    });
    // read once: it stays as it was read
    expect(
      await readIndicator({
        db,
        now: later(61),
        newId,
        person: technician,
        loadId: id,
        baseRevision: null,
        indicatorId: indicator,
        result: 'passed',
      }),
    ).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
  });
});

describe('a failed load holds everything since the last accepted one', () => {
  it('over several loads of that steriliser, and none of another', async () => {
    const hospital = await loadHospital();
    const { db, technician } = hospital;
    const pouches = [];
    for (let at = 0; at < 5; at += 1) pouches.push(await closedPouch(db, technician, 'driver'));
    const [before, first, second, third, elsewhere] = pouches;
    if (!before || !first || !second || !third || !elsewhere) throw new Error('five were closed');
    const good = await ranLoad(hospital, { steriliser: 2, packs: [before], at: later(1) });
    done(await acceptLoad(accepting(hospital, good, later(2))));
    const waiting = await ranLoad(hospital, { steriliser: 2, packs: [first], at: later(3) });
    const failing = await ranLoad(hospital, { steriliser: 2, packs: [second], at: later(4) });
    const after = await ranLoad(hospital, { steriliser: 2, packs: [third], at: later(5) });
    const set = await setCoded(db, 'DFB-03');
    const answer = done(await rejectLoad(rejecting(hospital, failing, later(6))));
    const doubted = await db.read.select().from(packsInDoubt).where(eq(packsInDoubt.failedLoadId, failing));
    expect(doubted.map((one) => one.packId).sort()).toEqual([first, second, third].sort());
    expect(answer.held).toBe(3);
    expect(await shelfOf(hospital, before)).toMatchObject({ heldBecause: null });
    expect((await packAt(hospital, second))?.state).toBe('undone');
    expect((await setCoded(db, 'DFB-03')).step).toBe(set.step);
    // the others wait: accepted later, they come to the shelf held, until a person lifts that
    done(await acceptLoad(accepting(hospital, waiting, later(7))));
    expect(await shelfOf(hospital, first)).toMatchObject({ heldBecause: 'loadUnknown' });
    const lifting = {
      db,
      now: later(8),
      person: hospital.lead,
      packId: first,
      reason: 'Machine tested three times.',
      attestation: attested(hospital.lead, 'iLiftThisHold', later(8)),
    };
    expect(await liftPouchHold({ ...lifting, reason: '' })).toMatchObject({
      ok: false,
      refusal: { because: 'invalid' },
    });
    done(await liftPouchHold(lifting));
    expect(await shelfOf(hospital, first)).toMatchObject({ heldBecause: null });
    expect(await liftPouchHold(lifting)).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    expect((await db.read.select().from(loads).where(eq(loads.id, after)))[0]?.state).toBe(
      'awaitingAcceptance',
    );
  });

  it('sets of the load go to the bench where the person says so, or are held; those of others are held', async () => {
    for (const setsGo of ['onBench', 'held'] as const) {
      const hospital = await loadHospital();
      const { db } = hospital;
      const awaiting = await loadIn(db, 'awaitingAcceptance');
      done(await rejectLoad({ ...rejecting(hospital, awaiting.id), setsGo }));
      const set = await setCoded(db, 'SFT-01');
      expect(set.step).toBe(setsGo);
      if (setsGo === 'held') expect(set.heldBecause).toBe('indicatorOrCycleFailed');
      expect(await findLedgerBreak(db.read)).toBeNull();
    }
  });

  it('rejecting one that was accepted: sets in store are held, one that went out is on record with its case', async () => {
    const hospital = await loadHospital();
    const { db, one } = hospital;
    await db.tx((write) =>
      write.insert(settings).values({ key: 'loads', value: { implantsAwaitBiological: false } }),
    );
    const awaiting = await loadIn(db, 'awaitingAcceptance');
    await passIndicators(hospital, awaiting.id);
    await lookAtAll(hospital, awaiting.id);
    done(await acceptLoad(accepting(hospital, awaiting.id)));
    const booked = (await db.read.select().from(cases)).find(({ endsAt }) => endsAt > later(60));
    const out = await setCoded(db, 'PHT-L1');
    done(
      await sendToTheatre({
        db,
        now: later(1),
        newId,
        person: one('scrubPractitioner'),
        setId: setId.parse(out.id),
        baseRevision: out.revision,
        caseId: caseId.parse(booked?.id ?? ''),
      }),
    );
    done(await rejectLoad(rejecting(hospital, awaiting.id, later(2))));
    expect(await setCoded(db, 'SFT-01')).toMatchObject({
      step: 'held',
      heldBecause: 'indicatorOrCycleFailed',
    });
    expect((await setCoded(db, 'PHT-L1')).step).toBe('inTheatre');
    const doubted = await db.read
      .select()
      .from(packsInDoubt)
      .where(eq(packsInDoubt.failedLoadId, awaiting.id));
    expect(doubted.find((pack) => pack.packId === out.packId)?.fateThen).toBe('used');
    expect(await rejectLoad(rejecting(hospital, awaiting.id, later(3)))).toMatchObject({
      ok: false,
      refusal: { because: 'frozen' },
    });
  });
});
