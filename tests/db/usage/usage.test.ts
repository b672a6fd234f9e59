import { eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { packsLeft } from '@/db/queries/usage/packsLeft';
import {
  caseReturns,
  caseUses,
  ledger,
  movesTakenBack,
  packs as packRows,
  pieceMoves,
  stock,
  usageMonths,
  useEntries,
} from '@/db/schema';
import { codesOf, saidOf } from '../caseLife/kitDesk';
import { unbalanced } from '../pieces/balance';
import { atTable, fromPack, fromSlot, SCREW, type UsageDesk, WIRE } from './usageDesk';

const usage = async (desk: UsageDesk, itemId: string) => {
  const rows = await desk.db.read.select().from(usageMonths).where(eq(usageMonths.itemId, itemId));
  const sum = (of: 'implanted' | 'wasted' | 'notFound') => rows.reduce((all, row) => all + row[of], 0);
  return { implanted: sum('implanted'), wasted: sum('wasted'), notFound: sum('notFound') };
};

describe('a record of use', () => {
  it('begins with its first entry, takes each entry once, and keeps whose it is', async () => {
    const desk = await atTable();
    const slot = await desk.slot();
    const first = await desk.enter(fromSlot(slot));
    expect(first.outcome.ok).toBe(true);
    // sent again after a lost answer
    const again = await desk.enter(fromSlot(slot), { id: first.id });
    expect(again.outcome).toEqual(first.outcome);
    expect((await desk.facts()).entries).toHaveLength(1);
    // another act, or another person, under the same id is no repeat
    expect((await desk.enter(fromSlot(slot, 'droppedOrDamaged'), { id: first.id })).outcome.ok).toBe(false);
    expect((await desk.enter(fromSlot(slot), { id: first.id, name: 'piotr-lennard' })).outcome.ok).toBe(
      false,
    );
    const said = await desk.db.read.select().from(ledger).where(eq(ledger.action, 'record-use'));
    expect(said).toHaveLength(1);
    expect(await findLedgerBreak(desk.db.read)).toBeNull();
  });

  it('is entered by those who may, for a case that has something in theatre', async () => {
    const desk = await atTable();
    const slot = await desk.slot();
    expect((await desk.enter(fromSlot(slot), { name: 'wren-adeyemi' })).outcome.ok).toBe(false);
    expect((await desk.enter(fromSlot(slot), { name: 'gwen-sallis' })).outcome.ok).toBe(false);
    expect((await desk.enter(fromSlot({ ...slot, lineId: 'line_none' }))).outcome.ok).toBe(false);
  });

  it('takes the entries of two people at once, and both see both', async () => {
    const desk = await atTable();
    const slot = await desk.slot();
    const done = await Promise.all([
      desk.enter(fromSlot(slot), { name: 'ruth-okonjo' }),
      desk.enter(fromSlot(slot), { name: 'piotr-lennard' }),
    ]);
    expect(done.map(({ outcome }) => outcome.ok)).toEqual([true, true]);
    expect((await desk.facts()).entries).toHaveLength(2);
    // of one single pack two people can't both say what became of it
    const screw = await desk.pack(SCREW);
    const both = await Promise.all([
      desk.enter(fromPack(screw), { name: 'ruth-okonjo' }),
      desk.enter(fromPack(screw), { name: 'piotr-lennard' }),
    ]);
    expect(both.filter(({ outcome }) => outcome.ok)).toHaveLength(1);
    // and one who has not seen the other’s entries does not close over them
    const mine = (await desk.facts()).entries.slice(0, 1).map(({ id }) => id);
    expect(saidOf(await desk.close({ entryIds: mine })).join(' ')).toContain('Others entered more');
  });

  it('is closed only with every entry here and what stays open seen', async () => {
    const desk = await atTable();
    const slot = await desk.slot();
    expect((await desk.close()).ok).toBe(false);
    const id = await desk.entered(fromSlot(slot));
    expect(saidOf(await desk.close({ entryIds: [id, 'entry_not-here'] })).join(' ')).toContain(
      'not saved yet',
    );
    expect(saidOf(await desk.close({ questions: [] })).join(' ')).toContain('What stays open has changed');
    const closed = await desk.close();
    expect(saidOf(closed)).toEqual([]);
    // both single packs out, and no final count of the set
    expect(closed).toMatchObject({ ok: true, value: { questions: 3 } });
    // twice is once
    expect(await desk.close()).toEqual(closed);
    expect((await desk.close({ name: 'piotr-lennard' })).ok).toBe(false);
    expect(await desk.moves(id)).toHaveLength(1);
  });

  it('is never changed, whatever the program asks', async () => {
    const desk = await atTable();
    await desk.entered(fromSlot(await desk.slot()));
    await desk.close();
    const { db, caseId } = desk;
    await expect(db.tx((write) => write.update(useEntries).set({ act: {} }))).rejects.toThrow(/append-only/);
    await expect(db.tx((write) => write.delete(useEntries))).rejects.toThrow(/append-only/);
    await expect(
      db.tx((write) => write.update(caseUses).set({ questions: [] }).where(eq(caseUses.caseId, caseId))),
    ).rejects.toThrow(/closed once/);
    const entry = {
      id: 'entry_past-the-program',
      caseId,
      act: fromSlot(await desk.slot()),
      personId: 'person_ruth-okonjo',
      doneAt: desk.now(),
      enteredAt: desk.now(),
    };
    await expect(db.tx((write) => write.insert(useEntries).values(entry))).rejects.toThrow(/reason why/);
  });
});

describe('closing', () => {
  it('takes pieces out of their slots at once, as what became of them', async () => {
    const desk = await atTable();
    const slot = await desk.slot(4);
    const before = await desk.found(slot);
    const set = await desk.set('DRT-01');
    const ids = [
      await desk.entered(fromSlot(slot)),
      await desk.entered(fromSlot(slot, 'openedNotImplanted')),
      await desk.entered(fromSlot(slot, 'droppedOrDamaged')),
      await desk.entered(fromSlot(slot, 'notFound', { lostAt: 'atCount' })),
    ];
    const wrong = await desk.entered(fromSlot(slot));
    await desk.entered(desk.takenBack(wrong));
    expect(await desk.found(slot)).toEqual(before);
    expect(saidOf(await desk.close())).toEqual([]);
    expect(await desk.found(slot)).toEqual({
      found: (before.found ?? 0) - 4,
      holding: (before.holding ?? 0) - 4,
    });
    const moves = (await Promise.all(ids.map((id) => desk.moves(id)))).flat();
    expect(moves).toMatchObject([
      { act: 'implanted', reason: null, caseId: desk.caseId, packId: set.packId, fromLineId: slot.lineId },
      { act: 'wasted', reason: 'openedNotImplanted' },
      { act: 'wasted', reason: 'damaged' },
      { act: 'notFound', reason: 'theatre' },
    ]);
    expect(await desk.moves(wrong)).toEqual([]);
    expect(await usage(desk, slot.itemId)).toEqual({ implanted: 1, wasted: 2, notFound: 1 });
    // a page that shows the set as it was must look again
    expect((await desk.set('DRT-01')).revision).toBeGreaterThan(set.revision);
    expect(await unbalanced(desk.db)).toEqual([]);
    expect(await findLedgerBreak(desk.db.read)).toBeNull();
  });

  it('records more than a slot held as found and used: it is asked about, and no slot holds less than nothing', async () => {
    const desk = await atTable();
    const slot = await desk.slot(2);
    const all = slot.recorded ?? 0;
    const id = await desk.entered(fromSlot(slot, 'implanted', { quantity: all + 1 }));
    expect((await desk.reckoned()).questions).toContainEqual(
      expect.objectContaining({ kind: 'beyond', pieces: 1 }),
    );
    expect(saidOf(await desk.close())).toEqual([]);
    expect(await desk.moves(id)).toMatchObject([
      { act: 'found', quantity: 1 },
      { act: 'implanted', quantity: all + 1 },
    ]);
    expect(await desk.found(slot)).toEqual({ found: 0, holding: 0 });
    expect(await unbalanced(desk.db)).toEqual([]);
  });

  it('says of single packs at the return what the record says, and never as unopened', async () => {
    const desk = await atTable();
    const [screw, wire] = [await desk.pack(SCREW), await desk.pack(WIRE)];
    const heap = (await desk.heap(WIRE)).quantity;
    const used = await desk.entered(fromPack(screw));
    const handed = await desk.entered(fromPack(wire, 'returnedUnopened'));
    // before the record is closed the return knows it too
    expect(codesOf(await desk.returned(screw.pickId, 'opened'))).toContain('more-than-out');
    expect((await packsLeft(desk.db.read, desk.caseId)).get(wire.pickId)).toMatchObject({
      left: 1,
      toJudge: 1,
    });
    expect(saidOf(await desk.close())).toEqual([]);
    expect(await desk.returns(screw.pickId)).toMatchObject([{ outcome: 'opened', quantity: 1 }]);
    expect(await desk.moves(used)).toMatchObject([
      { act: 'implanted', pickId: screw.pickId, lot: screw.lot, fromSetId: null },
    ]);
    // handed back: nothing goes to the shelf before somebody who may has judged its barrier
    expect(await desk.returns(wire.pickId)).toEqual([]);
    expect(await desk.moves(handed)).toEqual([]);
    expect((await desk.heap(WIRE)).quantity).toBe(heap);
    expect((await desk.returned(wire.pickId, 'returnedUnopened', { name: 'ruth-okonjo' })).ok).toBe(false);
    expect(saidOf(await desk.returned(wire.pickId, 'returnedUnopened'))).toEqual([]);
    expect((await desk.heap(WIRE)).quantity).toBe(heap + 1);
    const account = (await desk.reckoned()).accounts.find(({ key }) => key === wire.pickId);
    expect(account).toMatchObject({ out: 1, back: 1, open: 0, toJudge: 0 });
    expect(await unbalanced(desk.db)).toEqual([]);
  });

  it('takes up what the return said first, and asks what an opened pack became', async () => {
    const desk = await atTable();
    const [screw, wire] = [await desk.pack(SCREW), await desk.pack(WIRE)];
    expect(saidOf(await desk.returned(screw.pickId, 'opened'))).toEqual([]);
    expect(saidOf(await desk.returned(wire.pickId, 'damaged'))).toEqual([]);
    const { questions } = await desk.reckoned();
    expect(questions).toContainEqual({ kind: 'openedUnsaid', key: screw.pickId, pieces: 1 });
    // that pack is not another one
    expect(codesOf((await desk.enter(fromPack(screw))).outcome)).toEqual(['more-than-out']);
    const [row] = await desk.returns(screw.pickId);
    const returnId = row?.id ?? '';
    expect(codesOf((await desk.enter(fromPack(screw, 'returnedUnopened', { returnId }))).outcome)).toContain(
      'makes-clear',
    );
    const id = await desk.entered(fromPack(screw, 'implanted', { returnId }));
    expect(saidOf(await desk.close())).toEqual([]);
    // the return stands as it was, and the piece has moved
    expect(await desk.returns(screw.pickId)).toHaveLength(1);
    expect(await desk.moves(id)).toMatchObject([{ act: 'implanted', pickId: screw.pickId }]);
    const accounts = (await desk.reckoned()).accounts;
    expect(accounts.find(({ key }) => key === screw.pickId)).toMatchObject({ implanted: 1, open: 0 });
    expect(accounts.find(({ key }) => key === wire.pickId)).toMatchObject({ discarded: 1, open: 0 });
  });
});

describe('with the count at the bench', () => {
  it('before it: nothing is subtracted twice, and nothing is not found', async () => {
    const desk = await atTable();
    const slot = await desk.slot(3);
    await desk.entered(fromSlot(slot, 'implanted', { quantity: 2 }));
    await desk.close();
    const held = await desk.found(slot);
    const countId = await desk.countAtBench('DRT-01', { [slot.lineId]: held.found ?? 0 });
    expect(await desk.found(slot)).toEqual(held);
    expect((await desk.moves(countId)).filter(({ fromLineId }) => fromLineId === slot.lineId)).toEqual([]);
    expect(await usage(desk, slot.itemId)).toEqual({ implanted: 2, wasted: 0, notFound: 0 });
    expect(await unbalanced(desk.db)).toEqual([]);
  });

  it('after it: what was not found there is explained, and the figure people counted stands', async () => {
    const desk = await atTable();
    const slot = await desk.slot(3);
    const before = await desk.found(slot);
    const id = await desk.entered(fromSlot(slot, 'implanted', { quantity: 2 }));
    await desk.countAtBench('DRT-01', { [slot.lineId]: (before.found ?? 0) - 2 });
    expect(await usage(desk, slot.itemId)).toMatchObject({ notFound: 2 });
    const counted = await desk.found(slot);
    expect(saidOf(await desk.close())).toEqual([]);
    expect(await desk.found(slot)).toEqual(counted);
    expect(await desk.moves(id)).toMatchObject([
      { act: 'explained', quantity: 2, toLineId: slot.lineId },
      { act: 'implanted', quantity: 2, fromLineId: slot.lineId },
    ]);
    expect(await usage(desk, slot.itemId)).toEqual({ implanted: 2, wasted: 0, notFound: 0 });
    // the account still tells of the set as it was packed
    const account = (await desk.reckoned()).accounts.find(({ key }) => key.endsWith(slot.lineId));
    expect(account).toMatchObject({ out: before.found, back: (before.found ?? 0) - 2, implanted: 2 });
    expect(await unbalanced(desk.db)).toEqual([]);
  });

  it('after one that missed nothing: the figure stands, and the use is recorded all the same', async () => {
    const desk = await atTable();
    const slot = await desk.slot(3);
    const before = await desk.found(slot);
    const id = await desk.entered(fromSlot(slot));
    await desk.countAtBench('DRT-01', { [slot.lineId]: before.found ?? 0 });
    await desk.close();
    expect(await desk.moves(id)).toMatchObject([{ act: 'found' }, { act: 'implanted' }]);
    expect(await desk.found(slot)).toEqual(before);
    expect(await unbalanced(desk.db)).toEqual([]);
  });

  it('a correction after it leaves what people counted, and asks where the piece is again', async () => {
    const desk = await atTable();
    const slot = await desk.slot(3);
    const wrong = await desk.entered(fromSlot(slot));
    await desk.close();
    const held = await desk.found(slot);
    await desk.countAtBench('DRT-01', { [slot.lineId]: held.found ?? 0 });
    await desk.entered(desk.takenBack(wrong, 'It was never taken out.'));
    expect(await desk.found(slot)).toEqual(held);
    expect(await usage(desk, slot.itemId)).toEqual({ implanted: 0, wasted: 0, notFound: 1 });
    // and recorded again, it is explained by the use
    await desk.entered(fromSlot(slot, 'implanted', { because: 'It was after all.' }));
    expect(await desk.found(slot)).toEqual(held);
    expect(await usage(desk, slot.itemId)).toEqual({ implanted: 1, wasted: 0, notFound: 0 });
    expect(await unbalanced(desk.db)).toEqual([]);
  });
});

describe('an instrument', () => {
  it('is never implanted; opened, it is washed and no waste', async () => {
    const desk = await atTable();
    const coupling = await desk.pack(WIRE);
    expect(codesOf((await desk.enter(fromPack(coupling))).outcome)).toEqual(['no-implant']);
    const id = await desk.entered(fromPack(coupling, 'openedNotImplanted'));
    await desk.close();
    expect(await desk.moves(id)).toEqual([]);
    expect(await desk.returns(coupling.pickId)).toMatchObject([{ outcome: 'opened' }]);
    const account = (await desk.reckoned()).accounts.find(({ key }) => key === coupling.pickId);
    expect(account).toMatchObject({ back: 1, discarded: 0, open: 0 });
  });
});

describe('what is not to be opened', () => {
  it.each([
    ['held', { heldBecause: 'recall' }],
    // good through its day: the case is the day after
    ['pastUseBy', { useBy: '2026-01-01' }],
  ] as const)('%s: is refused once, and recorded where it was opened all the same', async (bar, change) => {
    const desk = await atTable();
    const screw = await desk.pack(SCREW);
    if (bar === 'held')
      await desk.db.tx((write) => write.update(stock).set(change).where(eq(stock.id, SCREW)));
    const useBy = 'useBy' in change ? change.useBy : null;
    const lot = useBy === null ? { kind: 'asIssued' } : { kind: 'read', lot: screw.lot ?? 'L', useBy };
    const act = fromPack(screw, 'implanted', { lot: lot as never });
    const refused = await desk.enter(act);
    expect(codesOf(refused.outcome)).toEqual(['do-not-open']);
    expect(saidOf(refused.outcome).join(' ')).toContain('Do not open');
    const despite = { ...act, despite: [bar] } as typeof act;
    expect(codesOf((await desk.enter(despite)).outcome)).toEqual(['needed']);
    expect((await desk.enter({ ...despite, note: 'Opened before it was seen.' })).outcome.ok).toBe(true);
  });

  it('may be handed back unopened, whatever it is', async () => {
    const desk = await atTable();
    const screw = await desk.pack(SCREW);
    await desk.db.tx((write) =>
      write.update(stock).set({ heldBecause: 'recall' }).where(eq(stock.id, SCREW)),
    );
    expect((await desk.enter(fromPack(screw, 'returnedUnopened'))).outcome.ok).toBe(true);
  });
});

describe('a correction', () => {
  it('is a further entry with its reason; what was wrong stays, and counts for nothing', async () => {
    const desk = await atTable();
    const slot = await desk.slot(3);
    const before = await desk.found(slot);
    const wrong = await desk.entered(fromSlot(slot));
    await desk.close();
    expect(codesOf((await desk.enter(desk.takenBack(wrong))).outcome)).toEqual(['needed']);
    expect((await desk.enter(desk.takenBack(wrong, 'x'), { name: 'wren-adeyemi' })).outcome.ok).toBe(false);
    await desk.entered(desk.takenBack(wrong, 'It was dropped, not implanted.'));
    expect(await desk.found(slot)).toEqual(before);
    await desk.entered(fromSlot(slot, 'droppedOrDamaged', { because: 'It was dropped, not implanted.' }));
    expect(await desk.found(slot)).toEqual({
      found: (before.found ?? 0) - 1,
      holding: (before.holding ?? 0) - 1,
    });
    expect(await usage(desk, slot.itemId)).toEqual({ implanted: 0, wasted: 1, notFound: 0 });
    const [move] = await desk.moves(wrong);
    expect(await desk.db.read.select().from(movesTakenBack)).toMatchObject([{ moveSeq: move?.seq }]);
    expect(codesOf((await desk.enter(desk.takenBack(wrong, 'again'))).outcome)).toEqual(['taken-back']);
    const said = await desk.db.read.select().from(ledger).where(eq(ledger.action, 'correct-use'));
    expect(said).toHaveLength(2);
    expect(await unbalanced(desk.db)).toEqual([]);
    expect(await findLedgerBreak(desk.db.read)).toBeNull();
  });

  it('of a single pack frees it at the return again', async () => {
    const desk = await atTable();
    const screw = await desk.pack(SCREW);
    const wrong = await desk.entered(fromPack(screw));
    await desk.close();
    expect((await desk.kit()).returns).toHaveLength(1);
    expect((await desk.returned(screw.pickId, 'damaged')).ok).toBe(false);
    await desk.entered(desk.takenBack(wrong, 'Another screw was meant.'));
    expect((await desk.kit()).returns).toEqual([]);
    expect(await usage(desk, screw.itemId)).toMatchObject({ implanted: 0 });
    expect(saidOf(await desk.returned(screw.pickId, 'damaged'))).toEqual([]);
    // nothing is written twice, and nothing was deleted
    expect(
      await desk.db.read.select().from(caseReturns).where(eq(caseReturns.pickId, screw.pickId)),
    ).toHaveLength(2);
    expect(await unbalanced(desk.db)).toEqual([]);
  });

  it('reaches only moves of a record of use', async () => {
    const desk = await atTable();
    const entry = await desk.entered(fromSlot(await desk.slot()));
    const [other] = await desk.db.read.select().from(pieceMoves).limit(1);
    await expect(
      desk.db.tx((write) =>
        write.insert(movesTakenBack).values({ moveSeq: other?.seq ?? 0, entryId: entry }),
      ),
    ).rejects.toThrow(/only what a record of use moved/);
  });
});

it('tells of a racked piece the pack of its set, and through it the load', async () => {
  const desk = await atTable();
  const id = await desk.entered(fromSlot(await desk.slot()));
  const [row] = await desk.db.read.select().from(useEntries).where(eq(useEntries.id, id));
  const [pack] = await desk.db.read
    .select()
    .from(packRows)
    .where(eq(packRows.id, row?.packId ?? ''));
  expect(pack).toMatchObject({ setId: 'set_drt-01' });
  expect(pack?.loadId).not.toBeNull();
});
