import { eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { acceptLoad } from '@/db/operations/loads/accept-load';
import { addIndicator } from '@/db/operations/loads/add-indicator';
import { importCycle } from '@/db/operations/loads/import-cycle';
import { unloadPack } from '@/db/operations/loads/unload-pack';
import { ledger, settings } from '@/db/schema';
import { packId } from '@/lib/identity/ids';
import { cycleFile } from '../../fixtures/cycleFile';
import { accepting, packAt, shelfOf } from './loadDecisions';
import {
  attested,
  closedPouch,
  done,
  loadHospital,
  loadIn,
  NOW,
  newId,
  ranLoad,
  setCoded,
} from './loadWorld';

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
