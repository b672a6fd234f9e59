import { eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { acceptLoad } from '@/db/operations/loads/accept-load';
import { liftPouchHold } from '@/db/operations/loads/lift-pouch-hold';
import { rejectLoad } from '@/db/operations/loads/reject-load';
import { sendToTheatre } from '@/db/operations/turns/send-to-theatre';
import { cases, loads, packsInDoubt, settings } from '@/db/schema';
import { caseId, setId } from '@/lib/identity/ids';
import { accepting, later, packAt, rejecting, shelfOf } from './loadDecisions';
import {
  attested,
  closedPouch,
  done,
  loadHospital,
  loadIn,
  lookAtAll,
  newId,
  passIndicators,
  ranLoad,
  setCoded,
} from './loadWorld';

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
