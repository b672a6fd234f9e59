import { eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { cancelCase } from '@/db/operations/theatre/cancel-case';
import { freeSet } from '@/db/operations/theatre/free-set';
import { receiveSet } from '@/db/operations/turns/receive-set';
import { sendToTheatre } from '@/db/operations/turns/send-to-theatre';
import { loadStore } from '@/db/queries/store';
import { casePicks, caseReturns, cases, ledger, notices, plans, setPromises, sets, stock } from '@/db/schema';
import { setId } from '@/lib/identity/ids';
import { availableFor } from '@/lib/kits/availability';
import { plainDate } from '@/lib/quantities/plainDate';
import { demoDatabase } from '../../setup/database';
import { codesOf, KitDesk, saidOf, setThing, stockThing } from './kitDesk';

/** Tomorrow's distal radius: a set, a screw in a sterile pack and a wire in a pouch. */
const RADIUS = 'LM-26-9RTB';
const SCREW = 'stock_demo-063';
const WIRE = 'stock_demo-021';

async function radius() {
  const desk = new KitDesk(await demoDatabase(), RADIUS);
  expect(saidOf(await desk.makeList())).toEqual([]);
  return desk;
}

const WHOLE = [{ thing: setThing('DRT-01') }, { thing: stockThing(SCREW) }, { thing: stockThing(WIRE) }];

async function picked() {
  const desk = await radius();
  for (const { thing } of WHOLE) expect(saidOf(await desk.pick(thing))).toEqual([]);
  expect(saidOf(await desk.finish())).toEqual([]);
  return desk;
}

async function issued() {
  const desk = await picked();
  expect(await desk.check(WHOLE)).toMatchObject({ ok: true, value: { differences: [] } });
  expect(saidOf(await desk.issue())).toEqual([]);
  return desk;
}

describe('a kit', () => {
  it('goes from the list to the store again, with set, packs and shelf kept in step', async () => {
    const desk = await radius();
    expect((await desk.kit()).list).toMatchObject([
      { kind: 'set', code: 'DRT-01' },
      { kind: 'pack', stockId: SCREW, quantity: 1 },
      { kind: 'pack', stockId: WIRE, quantity: 1 },
    ]);
    const before = [(await desk.heap(SCREW)).quantity, (await desk.heap(WIRE)).quantity];
    for (const { thing } of WHOLE) expect(saidOf(await desk.pick(thing))).toEqual([]);
    // picked is not gone: it lies with the kit, on record where it lay
    expect((await desk.heap(SCREW)).quantity).toBe(before[0]);
    expect(saidOf(await desk.finish())).toEqual([]);
    expect((await desk.kit()).stage).toBe('picked');
    expect(await desk.check(WHOLE)).toMatchObject({ ok: true, value: { differences: [] } });
    expect((await desk.kit()).stage).toBe('checked');
    expect(saidOf(await desk.issue())).toEqual([]);
    expect([(await desk.heap(SCREW)).quantity, (await desk.heap(WIRE)).quantity]).toEqual(
      before.map((pieces) => pieces - 1),
    );
    expect(await desk.set('DRT-01')).toMatchObject({ step: 'inTheatre', caseId: desk.caseId });
    expect((await desk.kit()).stage).toBe('issued');
    expect(saidOf(await desk.take())).toEqual([]);
    const [set, screw, wire] = (await desk.kit()).picks.map(({ id }) => id) as [string, string, string];
    expect(saidOf(await desk.returned(screw, 'opened'))).toEqual([]);
    expect(saidOf(await desk.returned(wire, 'returnedUnopened'))).toEqual([]);
    expect((await desk.kit()).stage).toBe('inTheatre');
    expect(saidOf(await desk.returned(set, 'cameBack'))).toEqual([]);
    expect((await desk.kit()).stage).toBe('back');
    expect([(await desk.heap(SCREW)).quantity, (await desk.heap(WIRE)).quantity]).toEqual([
      (before[0] ?? 0) - 1,
      before[1],
    ]);
    expect(await desk.set('DRT-01')).toMatchObject({ step: 'comingBack', caseId: null, packId: null });
    expect(await findLedgerBreak(desk.db.read)).toBeNull();
  });

  it('refuses what is not on the list, and names what was to be fetched', async () => {
    const desk = await radius();
    const wrong = await desk.pick(setThing('SFS-01'));
    expect(codesOf(wrong)).toContain('not-on-list');
    expect(saidOf(wrong).join(' ')).toContain('it asks for DRT-01');
    expect((await desk.kit()).picks).toEqual([]);
    const more = await desk.pick(stockThing(WIRE), { quantity: 2 });
    expect(codesOf(more)).toContain('enough');
  });

  it('says everything that is wrong with a set at once', async () => {
    const desk = await radius();
    await desk.db.tx(async (write) => {
      await write.update(sets).set({ useBy: '2026-01-14' }).where(eq(sets.code, 'SFS-02'));
    });
    // another kind, good only through today, and the case is tomorrow
    const outcome = await desk.pick(setThing('SFS-02'));
    expect(codesOf(outcome)).toEqual(expect.arrayContaining(['past-use-by', 'not-on-list']));
  });

  it('refuses a held lot and a lot past use-by on the case date, and says which to take instead', async () => {
    const desk = await radius();
    const heap = await desk.heap(SCREW);
    await desk.db.tx(async (write) => {
      await write
        .update(stock)
        .set({ heldBecause: 'recall', useBy: '2026-01-14' })
        .where(eq(stock.id, SCREW));
      await write.insert(stock).values({ ...heap, id: 'stock_test-other', lot: 'L27-9999', quantity: 2 });
    });
    const outcome = await desk.pick(stockThing(SCREW));
    expect(codesOf(outcome)).toEqual(['held', 'past-use-by']);
    for (const sentence of saidOf(outcome)) expect(sentence).toContain('take lot L27-9999');
    // the other lot of the same item is the same thing to the plan
    expect(saidOf(await desk.pick(stockThing('stock_test-other')))).toEqual([]);
  });

  it('takes a maker’s code by its lot, and guesses none', async () => {
    const desk = await radius();
    const heap = await desk.heap(SCREW);
    const item = { kind: 'item', itemId: heap.itemId, useBy: null } as const;
    const unknown = await desk.pick({ ...item, lot: 'L27-0000' } as never);
    expect(saidOf(unknown).join(' ')).toContain('is on no shelf on record');
    await desk.db.tx(async (write) => {
      await write.insert(stock).values({ ...heap, id: 'stock_test-other', lot: 'L27-9999' });
    });
    expect(saidOf(await desk.pick({ ...item, lot: null } as never)).join(' ')).toContain(
      'does not say its lot',
    );
    // the pack itself says it is past use-by, whatever the shelf's record says
    const said = await desk.pick({ ...item, lot: heap.lot, useBy: '2026-01-01' } as never);
    expect(codesOf(said)).toContain('past-use-by');
    expect(saidOf(await desk.pick({ ...item, lot: heap.lot } as never))).toEqual([]);
  });

  it('takes another copy only where the kit engine says it serves as well', async () => {
    const desk = new KitDesk(await demoDatabase(), 'LM-26-2HXD');
    await desk.makeList();
    expect((await desk.kit()).list).toMatchObject([{ code: 'SFS-01', alike: [{ code: 'SFS-02' }] }]);
    expect(codesOf(await desk.pick(setThing('SFL-05')))).toContain('not-on-list');
    expect(saidOf(await desk.pick(setThing('SFS-02')))).toEqual([]);
    expect(codesOf(await desk.pick(setThing('SFS-01')))).toEqual(['enough']);
    expect(saidOf(await desk.finish())).toEqual([]);
  });

  it('promises what is picked, and keeps it from every other case until it is put back', async () => {
    const desk = new KitDesk(await demoDatabase(), 'LM-26-2HXD');
    await desk.makeList();
    await desk.pick(setThing('SFS-02'));
    const promised = () => desk.db.read.select().from(setPromises).where(eq(setPromises.setId, 'set_sfs-02'));
    expect(await promised()).toMatchObject([{ caseId: desk.caseId }]);
    const [other] = await desk.db.read.select().from(cases).where(eq(cases.reference, 'LM-26-D3XE'));
    const sent = await sendToTheatre({
      db: desk.db,
      now: desk.now(),
      newId: desk.newId,
      person: await desk.person('wren-adeyemi'),
      setId: setId.parse('set_sfs-02'),
      baseRevision: (await desk.set('SFS-02')).revision,
      caseId: other?.id as never,
    });
    expect(sent.ok ? [] : sent.refusal.problems.map(({ code }) => code)).toContain('on-other-kit');
    const [pick] = (await desk.kit()).picks;
    expect(saidOf(await desk.putBack(pick?.id ?? ''))).toEqual([]);
    expect(await promised()).toEqual([]);
  });

  it('keeps the promise of a set that lies with its kit', async () => {
    const desk = await radius();
    await desk.pick(setThing('DRT-01'));
    const [booked] = await desk.db.read.select().from(cases).where(eq(cases.id, desk.caseId));
    const free = await freeSet({
      db: desk.db,
      now: desk.now(),
      newId: desk.newId,
      person: await desk.person('gwen-sallis'),
      caseId: desk.caseId,
      baseRevision: booked?.revision ?? 0,
      setId: setId.parse('set_drt-01'),
    });
    expect(saidOf(free as never).join(' ')).toContain('lies with its kit');
  });

  it('is done once, however often it is sent, and by whichever of two people comes first', async () => {
    const desk = await radius();
    const pick = {
      kind: 'pick',
      id: 'pick_once',
      thing: setThing('DRT-01'),
      quantity: 1,
      how: 'scan',
      doneAt: desk.now(),
    };
    const answers = await Promise.all([
      desk.send('wren-adeyemi', pick),
      desk.send('wren-adeyemi', pick),
      desk.pick(setThing('DRT-01'), { name: 'jolene-stott' }),
    ]);
    expect(answers.map(({ ok }) => ok)).toEqual([true, true, false]);
    expect(saidOf(answers[2]).join(' ')).toContain('is with this kit already');
    expect((await desk.kit()).picks).toHaveLength(1);
    expect((await desk.send('jolene-stott', pick)).ok).toBe(false);
  });

  it('loses and doubles nothing, whoever sends what how often at the same moment', async () => {
    const desk = await radius();
    const names = ['wren-adeyemi', 'jolene-stott', 'dilys-harrow'] as const;
    // three people reach for each of the three things, and every one of them is sent three times
    const sent = WHOLE.flatMap(({ thing }, at) =>
      names.map((name) => ({
        name,
        pick: { kind: 'pick', id: `pick_${at}-${name}`, thing, quantity: 1, how: 'scan', doneAt: desk.now() },
      })),
    );
    const thrice = [...sent, ...[...sent].reverse(), ...sent];
    const answers = await Promise.all(thrice.map(({ name, pick }) => desk.send(name, pick)));
    const taken = new Set(thrice.flatMap(({ pick }, at) => (answers[at]?.ok ? [pick.id] : [])));
    const { picks } = await desk.kit();
    expect(new Set(picks.map(({ id }) => id))).toEqual(taken);
    expect(picks.map(({ setId, stockId }) => setId ?? stockId).sort()).toEqual(
      ['set_drt-01', SCREW, WIRE].sort(),
    );
    // of one thing's three senders the same one is answered with yes every time
    expect(answers.filter(({ ok }) => ok)).toHaveLength(9);
    const told = await desk.db.read.select().from(ledger).where(eq(ledger.action, 'pick-for-case'));
    expect(told).toHaveLength(3);
  });

  it('is finished short only with a reason, and never with what is no longer needed', async () => {
    const desk = await radius();
    expect(codesOf(await desk.finish())).toEqual(expect.arrayContaining(['nothing-picked', 'needed']));
    await desk.pick(setThing('DRT-01'));
    expect(codesOf(await desk.finish())).toEqual(['needed']);
    expect(saidOf(await desk.finish('The wire comes from the second store.'))).toEqual([]);
    expect((await desk.kit()).life?.pickedNote).toBe('The wire comes from the second store.');
  });
});

describe('what lies with a kit', () => {
  it('is there for its own case, and for no other', async () => {
    const desk = await radius();
    await desk.pick(setThing('DRT-01'));
    await desk.pick(stockThing(SCREW));
    const all = (await desk.heap(SCREW)).quantity;
    const own = await loadStore(desk.db, desk.caseId);
    const other = await loadStore(desk.db, 'case_lm-26-d3xe');
    const screwIn = (store: typeof own) => store.packs.find(({ id }) => id === SCREW)?.quantity;
    expect([screwIn(own), screwIn(other)]).toEqual([all, all - 1]);
    const setIn = (store: typeof own) => store.sets.find(({ code }) => code === 'DRT-01')?.onKitOf;
    expect([setIn(own), setIn(other)]).toEqual([undefined, RADIUS]);
    const free = availableFor(other, plainDate.parse('2026-01-15'));
    expect(free.otherSets.find(({ set }) => set.code === 'DRT-01')?.because).toEqual({
      kind: 'onOtherKit',
      reference: RADIUS,
    });
  });
});

describe('the second check', () => {
  it('is nobody’s who picked, and needs their own proof', async () => {
    const desk = await picked();
    expect(saidOf(await desk.check(WHOLE, 'wren-adeyemi')).join(' ')).toContain('another person checks it');
    expect((await desk.check([])).ok).toBe(false);
  });

  it('shows differences both ways and leaves the kit unchecked', async () => {
    const desk = await picked();
    const closed = await desk.check([
      { thing: setThing('SFS-01') },
      { thing: stockThing(SCREW), quantity: 2 },
    ]);
    const screw = await desk.heap(SCREW);
    const wire = await desk.heap(WIRE);
    expect(closed).toMatchObject({
      ok: true,
      value: {
        differences: [
          { key: `${wire.itemId} lot `, picked: 1, seen: 0 },
          { key: `${screw.itemId} lot ${screw.lot}`, picked: 1, seen: 2 },
          { key: 'set_drt-01', picked: 1, seen: 0 },
          { key: 'set_sfs-01', picked: 0, seen: 1 },
        ],
      },
    });
    expect((await desk.kit()).stage).toBe('picked');
    expect((await desk.issue()).ok).toBe(false);
    expect(await desk.check(WHOLE)).toMatchObject({ ok: true, value: { differences: [] } });
  });

  it('ends when something is put back afterwards', async () => {
    const desk = await picked();
    await desk.check(WHOLE);
    const [first] = (await desk.kit()).picks;
    expect(saidOf(await desk.putBack(first?.id ?? '', { name: 'tomas-birkett' }))).toEqual([]);
    expect((await desk.kit()).stage).toBe('picking');
  });
});

describe('issuing', () => {
  it('sends nothing where one thing may not go, and says every reason', async () => {
    const desk = await picked();
    await desk.check(WHOLE);
    await desk.db.tx(async (write) => {
      await write.update(stock).set({ heldBecause: 'recall' }).where(eq(stock.id, SCREW));
      await write.update(sets).set({ useBy: '2026-01-14' }).where(eq(sets.code, 'DRT-01'));
    });
    const outcome = await desk.issue();
    expect(codesOf(outcome).sort()).toEqual(['held', 'past-use-by']);
    expect((await desk.set('DRT-01')).step).toBe('inSterileStore');
    expect((await desk.kit()).picks.every(({ issuedAt }) => issuedAt === null)).toBe(true);
  });

  it('waits for the list when the plan was confirmed anew', async () => {
    const desk = await picked();
    await desk.check(WHOLE);
    const versions = await desk.db.read.select().from(plans).where(eq(plans.caseId, desk.caseId));
    const plan = versions.find(({ status }) => status === 'confirmed');
    if (!plan) throw new Error('no plan');
    const newest = Math.max(...versions.map(({ version }) => version));
    await desk.db.tx(async (write) => {
      await write.update(plans).set({ status: 'superseded' }).where(eq(plans.id, plan.id));
      await write
        .insert(plans)
        .values({ ...plan, id: 'plan_test-next', version: newest + 1, status: 'confirmed' });
    });
    expect(saidOf(await desk.issue()).join(' ')).toContain('Work the list out again');
    expect(saidOf(await desk.makeList())).toEqual([]);
    // what is fetched already stays where it is, and is checked again
    const kit = await desk.kit();
    expect(kit.stage).toBe('picking');
    expect(kit.picks.filter(({ putBackAt }) => putBackAt === null)).toHaveLength(3);
    expect(saidOf(await desk.finish())).toEqual([]);
  });
});

describe('what theatre asks for later', () => {
  it('leaves the store as it is picked, from no list, and is still judged', async () => {
    const desk = await issued();
    const wire = await desk.heap(WIRE);
    expect((await desk.pick(setThing('SFS-02'), { name: 'dilys-harrow' })).ok).toBe(false);
    expect(saidOf(await desk.pick(setThing('SFS-02')))).toEqual([]);
    expect(await desk.set('SFS-02')).toMatchObject({ step: 'inTheatre', caseId: desk.caseId });
    await desk.db.tx((write) => write.update(stock).set({ quantity: 1 }).where(eq(stock.id, WIRE)));
    expect(saidOf(await desk.pick(stockThing(WIRE)))).toEqual([]);
    expect((await desk.heap(WIRE)).quantity).toBe(0);
    expect(codesOf(await desk.pick(stockThing(WIRE)))).toEqual(['none-left']);
    await desk.db.tx((write) => write.update(stock).set({ heldBecause: 'recall' }).where(eq(stock.id, WIRE)));
    expect(codesOf(await desk.pick(stockThing(WIRE)))).toContain('held');
    const kit = await desk.kit();
    expect(kit.picks.filter(({ issuedAt }) => issuedAt !== null)).toHaveLength(5);
    const later = kit.picks.findLast(({ stockId }) => stockId === WIRE);
    expect(saidOf(await desk.returned(later?.id ?? '', 'returnedUnopened'))).toEqual([]);
    expect((await desk.heap(WIRE)).quantity).toBe(1);
    expect(wire.itemId).toBe(later?.itemId);
    expect(await findLedgerBreak(desk.db.read)).toBeNull();
  });
});

describe('coming back', () => {
  it('takes a set unopened into the store only with a person’s word on its barrier', async () => {
    const desk = await issued();
    const [set] = (await desk.kit()).picks.map(({ id }) => id);
    expect((await desk.returned(set ?? '', 'returnedUnopened', { proven: false })).ok).toBe(false);
    expect((await desk.returned(set ?? '', 'returnedUnopened', { name: 'ruth-okonjo' })).ok).toBe(false);
    expect(saidOf(await desk.returned(set ?? '', 'returnedUnopened'))).toEqual([]);
    expect(await desk.set('DRT-01')).toMatchObject({ step: 'inSterileStore', caseId: null });
    expect((await desk.set('DRT-01')).packId).not.toBeNull();
    const [returned] = await desk.db.read.select().from(caseReturns);
    expect(returned?.attested).toMatchObject({ meaning: 'iLookedAtTheBarrier' });
  });

  it('knows a set received at the bench as back, and says nothing twice', async () => {
    const desk = await issued();
    const row = await desk.set('DRT-01');
    await receiveSet({
      db: desk.db,
      now: desk.now(),
      newId: desk.newId,
      person: await desk.person('wren-adeyemi'),
      setId: setId.parse(row.id),
      baseRevision: row.revision,
    });
    const [set] = (await desk.kit()).picks.map(({ id }) => id);
    expect((await desk.kit()).returns).toMatchObject([{ pickId: set, outcome: 'cameBack', quantity: 1 }]);
    expect((await desk.returned(set ?? '', 'cameBack')).ok).toBe(false);
  });

  it('never takes back more than went out, whatever is asked', async () => {
    const desk = await issued();
    const [, screw] = (await desk.kit()).picks.map(({ id }) => id);
    expect(codesOf(await desk.returned(screw ?? '', 'returnedUnopened', { quantity: 2 }))).toEqual([
      'more-than-out',
    ]);
    const id = 'return_once';
    expect((await desk.returned(screw ?? '', 'opened', { id })).ok).toBe(true);
    expect((await desk.returned(screw ?? '', 'opened', { id })).ok).toBe(true);
    expect((await desk.returned(screw ?? '', 'opened')).ok).toBe(false);
    expect(codesOf(await desk.returned(screw ?? '', 'notFound'))).toContain('needed');
    // and the database holds it, whatever the program asks
    await expect(
      desk.db.tx((write) =>
        write.insert(caseReturns).values({
          id: 'return_past-the-program',
          pickId: screw ?? '',
          outcome: 'opened',
          quantity: 1,
          doneAt: desk.now(),
          enteredAt: desk.now(),
        }),
      ),
    ).rejects.toThrow(/no more comes back than went out/);
  });
});

describe('a cancelled case', () => {
  it('leaves its picked things to be put back, and tells whoever picked', async () => {
    const desk = await radius();
    await desk.pick(setThing('DRT-01'));
    await desk.pick(stockThing(WIRE));
    const [booked] = await desk.db.read.select().from(cases).where(eq(cases.id, desk.caseId));
    const cancelled = await cancelCase({
      db: desk.db,
      now: desk.now(),
      newId: desk.newId,
      person: await desk.person('gwen-sallis'),
      caseId: desk.caseId,
      baseRevision: booked?.revision ?? 0,
      because: 'The theatre is needed.',
    });
    expect(cancelled.ok).toBe(true);
    expect((await desk.kit()).stage).toBe('toPutBack');
    const told = await desk.db.read.select().from(notices).where(eq(notices.kind, 'kitToPutBack'));
    expect(told).toMatchObject([{ personId: 'person_wren-adeyemi', detail: { things: 2 } }]);
    expect((await desk.pick(stockThing(SCREW))).ok).toBe(false);
    for (const { id } of (await desk.kit()).picks) expect(saidOf(await desk.putBack(id))).toEqual([]);
    expect((await desk.kit()).stage).toBe('cancelled');
  });
});

describe('the database', () => {
  it('puts a set on one kit, and no more packs on kits than lie there, whatever the program asks', async () => {
    const desk = await radius();
    await desk.pick(setThing('DRT-01'));
    const [row] = await desk.db.read.select().from(casePicks);
    if (!row) throw new Error('nothing is picked');
    await expect(
      desk.db.tx((write) => write.insert(casePicks).values({ ...row, id: 'pick_second' })),
    ).rejects.toThrow(/UNIQUE/);
    const heap = await desk.heap(SCREW);
    const pack = { ...row, id: 'pick_packs', setId: null, stockId: SCREW, itemId: heap.itemId };
    await expect(
      desk.db.tx((write) => write.insert(casePicks).values({ ...pack, quantity: heap.quantity + 1 })),
    ).rejects.toThrow(/more would be picked than lies there/);
    await desk.db.tx((write) => write.insert(casePicks).values({ ...pack, quantity: heap.quantity }));
    await expect(
      desk.db.tx((write) =>
        write
          .update(stock)
          .set({ quantity: heap.quantity - 1 })
          .where(eq(stock.id, SCREW)),
      ),
    ).rejects.toThrow(/what is picked for a case/);
    await expect(
      desk.db.tx((write) => write.delete(casePicks).where(eq(casePicks.id, 'pick_packs'))),
    ).rejects.toThrow(/never deleted/);
  });
});
