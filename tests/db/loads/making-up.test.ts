import { and, eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { addIndicator } from '@/db/operations/loads/add-indicator';
import { endLoad } from '@/db/operations/loads/end-load';
import { giveUpLoad } from '@/db/operations/loads/give-up-load';
import { importCycle } from '@/db/operations/loads/import-cycle';
import { makeUpLoad } from '@/db/operations/loads/make-up-load';
import { putPackIn } from '@/db/operations/loads/put-pack-in';
import { startLoad } from '@/db/operations/loads/start-load';
import { takePackOut } from '@/db/operations/loads/take-pack-out';
import { unloadPack } from '@/db/operations/loads/unload-pack';
import { holdSet } from '@/db/operations/turns/hold-set';
import { labelPrints, ledger, loadPacks, loadReadings, loads, packs } from '@/db/schema';
import { packId, setId, steriliserId } from '@/lib/identity/ids';
import { cycleFile } from '../../fixtures/cycleFile';
import { closedPouch, done, loadHospital, loadIn, NOW, newId, setCoded } from './loadWorld';

const PROGRAMME = '134 °C wrapped';
const PACKED_SET = 'DFB-03';

async function opened() {
  const hospital = await loadHospital();
  const common = { db: hospital.db, now: NOW, newId, person: hospital.technician, baseRevision: null };
  const load = done(
    await makeUpLoad({ ...common, steriliserId: steriliserId.parse('steriliser_2'), programme: PROGRAMME }),
  );
  const set = await setCoded(hospital.db, PACKED_SET);
  if (set.packId === null) throw new Error('it is packed');
  return {
    ...hospital,
    common,
    load,
    set,
    pack: packId.parse(set.packId),
    at: { ...common, loadId: load.id },
  };
}

describe('a load is made up', () => {
  it('gets the next number, once for each steriliser at a time, by those who may', async () => {
    const { common, load, one } = await opened();
    expect(load.number).toMatch(/^L2-\d{5}$/);
    const steriliser = steriliserId.parse('steriliser_2');
    expect(await makeUpLoad({ ...common, steriliserId: steriliser, programme: PROGRAMME })).toMatchObject({
      ok: false,
      refusal: { because: 'frozen', problems: [{ message: expect.stringContaining(load.number) }] },
    });
    const other = done(
      await makeUpLoad({ ...common, steriliserId: steriliserId.parse('steriliser_1'), programme: PROGRAMME }),
    );
    expect(Number(other.number.slice(-5))).toBe(Number(load.number.slice(-5)) + 1);
    for (const role of ['surgeon', 'stockKeeper', 'administrator'] as const)
      expect(
        await makeUpLoad({ ...common, person: one(role), steriliserId: steriliser, programme: PROGRAMME }),
      ).toMatchObject({ ok: false, refusal: { because: 'notPermitted' } });
    expect(
      await makeUpLoad({ ...common, steriliserId: steriliserId.parse('steriliser_1'), programme: 'hot' }),
    ).toMatchObject({ ok: false });
  });

  it('takes a closed pack once however often it is scanned, and lets it out again', async () => {
    const { db, at, pack, load } = await opened();
    const first = done(await putPackIn({ ...at, packId: pack, copy: 1 }));
    const again = done(await putPackIn({ ...at, packId: pack, copy: 1 }));
    expect(again.revision).toBe(first.revision);
    expect(await db.read.select().from(loadPacks).where(eq(loadPacks.loadId, load.id))).toHaveLength(1);
    done(await takePackOut({ ...at, packId: pack }));
    const [row] = await db.read.select().from(packs).where(eq(packs.id, pack));
    expect(row).toMatchObject({ state: 'closed', loadId: null });
    done(await putPackIn({ ...at, packId: pack, copy: null }));
    done(await giveUpLoad(at));
    expect((await db.read.select().from(packs).where(eq(packs.id, pack)))[0]).toMatchObject({
      state: 'closed',
      loadId: null,
    });
    expect(await putPackIn({ ...at, packId: pack, copy: null })).toMatchObject({
      ok: false,
      refusal: { because: 'frozen' },
    });
  });

  it('refuses an old label, a pack in another load, one that is not closed, and a set that is held', async () => {
    const { db, at, common, pack, set, one, technician } = await opened();
    await db.tx(async (write) => {
      for (const copy of [1, 2])
        await write
          .insert(labelPrints)
          .values({
            id: newId('print'),
            packId: pack,
            copy,
            because: copy === 1 ? null : 'torn',
            printedBy: technician.id,
            printedAt: NOW,
          })
          .onConflictDoNothing();
    });
    const codes = async (request: Parameters<typeof putPackIn>[0]) => {
      const answer = await putPackIn(request);
      return answer.ok ? [] : answer.refusal.problems.map(({ code }) => code);
    };
    expect(await codes({ ...at, packId: pack, copy: 1 })).toEqual(['old-label']);
    const other = done(
      await makeUpLoad({ ...common, steriliserId: steriliserId.parse('steriliser_1'), programme: PROGRAMME }),
    );
    const pouch = await closedPouch(db, technician);
    done(await putPackIn({ ...common, loadId: other.id, packId: pouch, copy: null }));
    expect(await codes({ ...at, packId: pouch, copy: null })).toEqual(['in-other-load']);
    const sterile = await setCoded(db, 'SFS-01');
    expect(await codes({ ...at, packId: packId.parse(sterile.packId), copy: null })).toEqual([
      'not-closed',
      'not-packed',
    ]);
    done(
      await holdSet({
        ...common,
        person: one('decontaminationLead'),
        setId: setId.parse(set.id),
        baseRevision: set.revision,
        because: 'wrongLabel',
        note: 'twins swapped',
      }),
    );
    expect(await codes({ ...at, packId: pack, copy: 2 })).toEqual(['not-packed']);
    expect(await putPackIn({ ...at, packId: packId.parse('pack_none'), copy: null })).toMatchObject({
      ok: false,
      refusal: { because: 'notFound' },
    });
  });

  it('starts once, with something in it, one at a time; its sets are then in the steriliser', async () => {
    const { db, at, pack, load, common } = await opened();
    expect(await startLoad({ ...at, cycleNumber: '' })).toMatchObject({
      ok: false,
      refusal: { problems: [{ code: 'empty' }] },
    });
    done(await putPackIn({ ...at, packId: pack, copy: null }));
    done(await startLoad({ ...at, cycleNumber: ' 4711 ' }));
    expect((await setCoded(db, PACKED_SET)).step).toBe('inSteriliser');
    expect(await startLoad({ ...at, cycleNumber: '' })).toMatchObject({
      ok: false,
      refusal: { because: 'frozen', current: { state: 'running' } },
    });
    const [row] = await db.read.select().from(loads).where(eq(loads.id, load.id));
    expect(row).toMatchObject({ cycleNumber: '4711', ran: { name: PROGRAMME, holdSeconds: 180 } });
    const running = await loadIn(db, 'running');
    expect(running.number).not.toBe(''); // steriliser 1 of the demo runs too
    const pouch = await closedPouch(db, common.person);
    const next = done(
      await makeUpLoad({ ...common, steriliserId: steriliserId.parse('steriliser_2'), programme: PROGRAMME }),
    );
    done(await putPackIn({ ...common, loadId: next.id, packId: pouch, copy: null }));
    expect(await startLoad({ ...common, loadId: next.id, cycleNumber: '' })).toMatchObject({
      ok: false,
      refusal: { problems: [{ code: 'running' }] },
    });
  });

  it('is refused where somebody else changed it, with what stands', async () => {
    const { at, pack } = await opened();
    done(await putPackIn({ ...at, packId: pack, copy: null }));
    expect(await startLoad({ ...at, baseRevision: 1, cycleNumber: '' })).toMatchObject({
      ok: false,
      refusal: { because: 'conflict', current: { revision: 2, state: 'makingUp' } },
    });
  });
});

describe('a load is run and read', () => {
  async function ran() {
    const world = await opened();
    const { at, db, technician, pack } = world;
    const pouch = await closedPouch(db, technician);
    for (const packed of [pack, pouch]) done(await putPackIn({ ...at, packId: packed, copy: null }));
    done(await startLoad({ ...at, cycleNumber: '' }));
    done(await endLoad(at));
    return { ...world, pouch };
  }

  it('ends into awaiting acceptance, its sets and packs with it', async () => {
    const { db, pack, pouch } = await ran();
    expect((await setCoded(db, PACKED_SET)).step).toBe('awaitingAcceptance');
    for (const id of [pack, pouch])
      expect((await db.read.select().from(packs).where(eq(packs.id, id)))[0]?.state).toBe(
        'awaitingAcceptance',
      );
  });

  it('a set held while it ran waits with its load once the hold is lifted', async () => {
    const { db, lead, technician } = await loadHospital();
    const common = { db, now: NOW, newId, person: lead };
    const running = await loadIn(db, 'running');
    const set = await setCoded(db, 'DTT-02');
    done(
      await holdSet({
        ...common,
        setId: setId.parse(set.id),
        baseRevision: set.revision,
        because: 'recall',
        note: 'notice 12',
      }),
    );
    done(await endLoad({ ...common, person: technician, loadId: running.id, baseRevision: null }));
    expect(await setCoded(db, 'DTT-02')).toMatchObject({ step: 'held', heldFrom: 'awaitingAcceptance' });
    expect((await setCoded(db, 'BEN-02')).step).toBe('awaitingAcceptance');
  });

  it('a dry run keeps nothing; an import keeps every reading, and a second one replaces it', async () => {
    const { db, at, load } = await ran();
    const kept = () => db.read.select().from(loadReadings).where(eq(loadReadings.loadId, load.id));
    const dry = done(await importCycle({ ...at, text: cycleFile(), fileName: 'c.csv', dryRun: true }));
    expect(dry.summary.dose?.holding?.outcome).toBe('held');
    expect(await kept()).toEqual([]);
    const real = done(await importCycle({ ...at, text: cycleFile(), fileName: 'c.csv', dryRun: false }));
    expect(await kept()).toHaveLength(real.readings.length);
    done(
      await importCycle({ ...at, text: cycleFile({ holdSeconds: 100 }), fileName: 'd.csv', dryRun: false }),
    );
    const [row] = await db.read.select().from(loads).where(eq(loads.id, load.id));
    expect(row?.cycle).toMatchObject({
      fileName: 'd.csv',
      dose: { holding: { outcome: 'notHeld', longestSeconds: 100 } },
    });
    const entries = await db.read
      .select()
      .from(ledger)
      .where(and(eq(ledger.action, 'import-cycle'), eq(ledger.subjectId, load.id)));
    expect(entries.at(-1)?.detail).toMatchObject({ replaced: { fileName: 'c.csv' } });
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('one bad cell keeps the whole file out', async () => {
    const { db, at, load } = await ran();
    const answer = await importCycle({
      ...at,
      text: `${cycleFile()}\n9000;hot`,
      fileName: null,
      dryRun: false,
    });
    expect(answer).toMatchObject({
      ok: false,
      refusal: { because: 'invalid', problems: [{ path: ['lines', expect.any(Number), 2] }] },
    });
    expect(await db.read.select().from(loadReadings).where(eq(loadReadings.loadId, load.id))).toEqual([]);
  });

  it('a wet pack holds its set at once and never becomes sound again', async () => {
    const { db, at, pack, pouch } = await ran();
    done(await unloadPack({ ...at, packId: pack, as: 'sound' }));
    done(await unloadPack({ ...at, packId: pack, as: 'wet' }));
    expect(await setCoded(db, PACKED_SET)).toMatchObject({
      step: 'held',
      heldBecause: 'wrapWetTornOrUnsealed',
    });
    expect((await db.read.select().from(packs).where(eq(packs.id, pack)))[0]?.state).toBe('undone');
    expect(await unloadPack({ ...at, packId: pack, as: 'sound' })).toMatchObject({
      ok: false,
      refusal: { because: 'frozen' },
    });
    done(await unloadPack({ ...at, packId: pouch, as: 'torn' }));
    expect((await db.read.select().from(packs).where(eq(packs.id, pouch)))[0]?.state).toBe('undone');
  });

  it('indicators say what is wrong with them at once', async () => {
    const { at } = await ran();
    const bad = { kind: 'spore', lot: 'x'.repeat(50), useBy: '31/12/2026', position: '', result: 'fine' };
    const answer = await addIndicator({ ...at, entry: bad });
    if (answer.ok) throw new Error('it is refused');
    expect(answer.refusal.problems.map(({ path }) => path.join('.')).sort()).toEqual([
      'kind',
      'lot',
      'result',
      'useBy',
    ]);
  });
});
