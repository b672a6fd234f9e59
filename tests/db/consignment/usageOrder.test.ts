import { eq, sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { approveUsageOrder } from '@/db/operations/consignment/approve-usage-order';
import { chooseReplacement } from '@/db/operations/consignment/choose-replacement';
import { markUsageOrderSent } from '@/db/operations/consignment/mark-usage-order-sent';
import { settleUsageOrder } from '@/db/operations/consignment/settle-usage-order';
import { stateOwner } from '@/db/operations/consignment/state-owner';
import { withdrawUsageOrder } from '@/db/operations/consignment/withdraw-usage-order';
import { putOnHeap, takeOffHeap } from '@/db/operations/pieces/heaps';
import { recordMoves } from '@/db/operations/pieces/record-moves';
import { listOwners, lotsOfNobodyStated } from '@/db/queries/consignment/owners';
import { usageOfOwner } from '@/db/queries/consignment/usageOfOwner';
import { THE_PROGRAM } from '@/db/reader';
import { ledger, stock, usageOrderLines } from '@/db/schema';
import { usageLineId } from '@/lib/identity/ids';
import { codesOf, done } from '../stock/shelf';
import { atTable, fromPack, fromSlot, SCREW } from '../usage/usageDesk';
import { Consigned, ForOwner, ITEM, OTHER_OWNER, OWNER } from './consigned';

describe('a usage order', () => {
  it('tells each use once, by item and lot, and then waits for a person', async () => {
    const at = await Consigned.open();
    await at.adjust('damaged', 1);
    await at.adjust('notFound', 2);
    const id = await at.made();
    const order = await at.order(id);
    expect(order.number).toBe('UO-0001');
    expect(
      order.lines.map(({ way, lot, pieces, outcome, replace }) => ({ way, lot, pieces, outcome, replace })),
    ).toEqual([
      { way: 'used', lot: 'CONS-1', pieces: 1, outcome: 'droppedOrDamaged', replace: null },
      { way: 'used', lot: 'CONS-1', pieces: 2, outcome: 'notFound', replace: null },
    ]);
    expect(at.waiting()).toEqual([]);
    // nobody has said what is to be replaced, so nobody approves it
    expect(codesOf(await approveUsageOrder(await at.at(id)))).toEqual(['frozen']);
    await at.choose(id);
    // the stock keeper makes it, and does not approve it
    expect(codesOf(await approveUsageOrder(await at.at(id, at.shelf.keeper)))).toEqual(['not-permitted']);
    expect(codesOf(await markUsageOrderSent({ ...(await at.at(id)), how: 'by post' }))).toEqual(['frozen']);
    done(await approveUsageOrder(await at.at(id)));
    done(await markUsageOrderSent({ ...(await at.at(id, at.shelf.keeper)), how: 'by e-mail to their desk' }));
    expect(await at.order(id)).toMatchObject({
      state: 'sent',
      sentHow: 'by e-mail to their desk',
      revision: 4,
    });
    const acts = await at.db.read
      .select({ action: ledger.action })
      .from(ledger)
      .where(eq(ledger.subjectId, id));
    expect(acts.map(({ action }) => action)).toEqual([
      'make-usage-order',
      'choose-replacement',
      'approve-usage-order',
      'mark-usage-order-sent',
    ]);
  });

  it('has what was used since, and nothing that an earlier one has', async () => {
    const at = await Consigned.open();
    await at.adjust('damaged', 1);
    const first = await at.sent();
    expect(codesOf(await at.make({ lines: 1 }))).toEqual(['frozen']);
    await at.adjust('opened', 1);
    const second = await at.sent();
    expect((await at.order(second)).lines.map(({ outcome }) => outcome)).toEqual(['openedNotImplanted']);
    expect((await at.order(first)).lines).toHaveLength(1);
    expect(at.onTwoOrders()).toEqual([]);
  });

  it('is made once, whoever asks twice and however many at once', async () => {
    const at = await Consigned.open();
    await at.adjust('damaged', 2);
    const id = at.shelf.newId('usageOrder');
    const [one, again] = await Promise.all([at.make({ id, lines: 1 }), at.make({ id, lines: 1 })]);
    expect(done(one)).toEqual(done(again));
    // another person under the same id, and another order beside it
    expect(codesOf(await at.make({ id, lines: 1, person: at.shelf.manager }))).toEqual(['conflict']);
    expect(codesOf(await at.make({ lines: 1, person: at.shelf.manager }))).toEqual(['conflict']);
    expect(at.onTwoOrders()).toEqual([]);
    // two people who chose at once: the second sees it changed
    const [line] = (await at.order(id)).lines;
    const asked = await at.at(id, at.shelf.keeper);
    const choices = [{ lineId: usageLineId.parse(line?.id), replace: true }];
    const both = await Promise.all([
      chooseReplacement({ ...asked, choices }),
      chooseReplacement({ ...asked, choices: choices.map((one_) => ({ ...one_, replace: false })) }),
    ]);
    expect(both.map((one_) => one_.ok)).toEqual([true, false]);
  });

  it('is not made of what nobody saw', async () => {
    const at = await Consigned.open();
    await at.adjust('damaged', 1);
    const seen = at.waiting().length;
    await at.adjust('damaged', 1);
    expect(codesOf(await at.make({ lines: seen }))).toEqual(['conflict']);
  });

  it('that is withdrawn gives its lines back; one that was sent stays', async () => {
    const at = await Consigned.open();
    await at.adjust('damaged', 1);
    const first = await at.approved();
    expect(
      codesOf(
        await withdrawUsageOrder({ ...(await at.at(first)), because: 'Patient name Jane Roe, 01/02/1950' }),
      ),
    ).not.toEqual([]);
    done(await withdrawUsageOrder({ ...(await at.at(first)), because: 'The wrong owner was chosen.' }));
    expect(at.waiting()).toHaveLength(1);
    const second = await at.sent();
    expect(
      codesOf(await withdrawUsageOrder({ ...(await at.at(second)), because: 'Changed our mind.' })),
    ).toEqual(['frozen']);
    expect((await at.order(first)).lines).toHaveLength(1);
    expect(at.onTwoOrders()).toEqual([]);
  });

  it('is guarded by the database too: no move on two orders, no line changed, nothing deleted', async () => {
    const at = await Consigned.open();
    await at.adjust('damaged', 1);
    const first = await at.sent();
    await at.adjust('damaged', 1);
    const second = await at.made();
    const [old] = await at.db.read.select().from(usageOrderLines).where(eq(usageOrderLines.orderId, first));
    if (!old) throw new Error('it has a line');
    const tries = [
      (write: typeof at.db.read) =>
        write.insert(usageOrderLines).values({ ...old, id: 'usageLine_copy', orderId: second, lineNo: 9 }),
      (write: typeof at.db.read) =>
        write.update(usageOrderLines).set({ pieces: 9 }).where(eq(usageOrderLines.id, old.id)),
      (write: typeof at.db.read) =>
        write.update(usageOrderLines).set({ replace: false }).where(eq(usageOrderLines.id, old.id)),
      (write: typeof at.db.read) =>
        write.update(usageOrderLines).set({ withdrawn: true }).where(eq(usageOrderLines.id, old.id)),
      (write: typeof at.db.read) => write.delete(usageOrderLines).where(eq(usageOrderLines.id, old.id)),
      (write: typeof at.db.read) =>
        write.run(sql`UPDATE usage_orders SET state = 'withdrawn' WHERE id = ${first}`),
      (write: typeof at.db.read) =>
        write.run(sql`UPDATE usage_orders SET state = 'sent', sent_at = made_at,
        sent_by = made_by, sent_how = 'x', approved_at = made_at, approved_by = made_by WHERE id = ${second}`),
      (write: typeof at.db.read) => write.run(sql`DELETE FROM usage_orders WHERE id = ${first}`),
      (write: typeof at.db.read) =>
        write.update(stock).set({ lenderId: OTHER_OWNER }).where(eq(stock.id, at.heap)),
      (write: typeof at.db.read) => write.run(sql`UPDATE stock SET owner = 'ours' WHERE id = ${at.heap}`),
    ];
    for (const one of tries)
      await expect(at.db.tx(async (write) => void (await one(write)))).rejects.toThrow();
  });
});

describe('a record of use that is corrected after an order told of it', () => {
  it('is taken back by the next order, with what is right beside it', async () => {
    const desk = await atTable();
    const keeper = await desk.person('dilys-harrow');
    const manager = await desk.person('gwen-sallis');
    const told = new ForOwner({ db: desk.db, newId: desk.newId, now: () => desk.now(), keeper, manager });
    await desk.db.tx(async (write) => {
      await write.update(stock).set({ owner: 'consignment', lenderId: OWNER }).where(eq(stock.id, SCREW));
    });
    const because = 'Read again from the wrapper.';
    const entry = await desk.entered(fromPack(await desk.pack(SCREW)));
    // while the record is open nothing has moved, and nobody is told
    expect(told.waiting()).toEqual([]);
    done(await desk.close());
    expect(told.waiting()).toMatchObject([
      { way: 'used', outcome: 'implanted', caseId: desk.caseId, knownBy: 'heap' },
    ]);
    const first = await told.made();
    await told.choose(first);
    // corrected before it is approved: nobody approves what is known to be wrong
    await desk.entered(desk.takenBack(entry, because));
    expect(codesOf(await approveUsageOrder(await told.at(first)))).toEqual(['frozen']);
    done(await withdrawUsageOrder({ ...(await told.at(first)), because: 'It was not implanted after all.' }));
    expect(told.waiting()).toEqual([]);
    const again = await desk.entered(fromPack(await desk.pack(SCREW), 'implanted', { because }));
    const second = await told.sent();
    await desk.entered(desk.takenBack(again, because));
    await desk.entered(fromPack(await desk.pack(SCREW), 'droppedOrDamaged', { because }));
    const lines = ['takenBack implanted', 'used droppedOrDamaged'];
    expect(told.waiting().map(({ way, outcome }) => `${way} ${outcome}`)).toEqual(lines);
    const third = await told.approved();
    expect((await told.order(third)).lines.map(({ way, outcome }) => `${way} ${outcome}`).sort()).toEqual(
      lines,
    );
    expect(told.waiting()).toEqual([]);
    expect((await told.order(second)).lines).toMatchObject([{ way: 'used', outcome: 'implanted' }]);
    expect(told.onTwoOrders()).toEqual([]);
    // the later one stands on the earlier
    expect(
      (await told.order(third)).lines.every(({ replace, way }) => (way === 'used') === (replace !== null)),
    ).toBe(true);
  });
});

describe('pieces out of a slot that holds others’ too', () => {
  it('are told with their bounds and charged to nobody; with their lot read they are charged', async () => {
    const desk = await atTable();
    const slot = await desk.slot(3);
    // two of the owner’s pieces lie in the slot among ours; nobody keeps them apart
    await desk.db.tx(async (write) => {
      await write.run(sql`INSERT INTO stock (id, item_id, form, lot, quantity, owner, place_id, revision, lender_id)
        VALUES ('stock_cons', ${slot.itemId}, 'unsterile', 'CONS-7', 0, 'consignment', 'place_general-stores', 1, ${OWNER})`);
      const move = (act: string, from: string | null, to: string | null, at: string) =>
        write.run(sql`INSERT INTO piece_moves (act, item_id, lot, quantity, owner, from_stock_id, to_stock_id, to_set_id,
          to_line_id, done_on, done_at, entered_at) VALUES (${act}, ${slot.itemId}, 'CONS-7', 2, 'consignment', ${from}, ${to},
          ${from === null ? null : slot.setId}, ${from === null ? null : slot.lineId}, '2026-01-14', ${at}, ${at})`);
      await move('received', null, 'stock_cons', '2026-01-14T06:30:10.000Z');
      await move('refilled', 'stock_cons', null, '2026-01-14T06:30:20.000Z');
    });
    await desk.entered(fromSlot(slot));
    await desk.entered(
      fromSlot(slot, 'implanted', {
        lot: { kind: 'read', lot: 'CONS-7', useBy: null },
      }),
    );
    done(await desk.close());
    const owner = () => usageOfOwner(desk.db.read, OWNER);
    expect(owner().waiting).toMatchObject([{ way: 'used', lot: 'CONS-7', pieces: 1, knownBy: 'lotRead' }]);
    expect(owner().uncertain).toMatchObject([
      {
        setId: slot.setId,
        itemId: slot.itemId,
        caseId: desk.caseId,
        outcome: 'implanted',
        pieces: 1,
        lo: 0,
        hi: 1,
      },
    ]);
    expect(owner().inSlots).toMatchObject([{ itemId: slot.itemId, lo: 0, hi: 1 }]);
    // the owner is told of it once; it stays on the page until a lot is read
    const told = new ForOwner({
      ...{ db: desk.db, newId: desk.newId, now: () => desk.now() },
      keeper: await desk.person('dilys-harrow'),
      manager: await desk.person('gwen-sallis'),
    });
    expect((await told.order(await told.sent())).uncertain).toMatchObject([{ pieces: 1, lo: 0, hi: 1 }]);
    const at = desk.now();
    await desk.db.tx(async (write) => {
      const kind = { itemId: slot.itemId, lot: 'CONS-8', useBy: null, quantity: 1 };
      const heap = { ...kind, form: 'unsterile' as const, owner: 'consignment' as const, lenderId: OWNER };
      const stockId = await putOnHeap(write, { ...heap, placeId: 'place_general-stores', newId: desk.newId });
      await takeOffHeap(write, stockId, 1);
      const by = { personId: null, doneAt: at, enteredAt: at };
      await recordMoves(write, [
        { act: 'received', ...kind, to: { stockId }, ...by },
        { act: 'wasted', ...kind, reason: 'damaged', from: { stockId }, ...by },
      ]);
    });
    expect((await told.order(await told.sent())).uncertain).toEqual([]);
    expect(owner().uncertain).toHaveLength(1);
  });
});

describe('whose stock it is', () => {
  const stating = (at: Consigned, entry: object, person = at.shelf.keeper) =>
    stateOwner({ db: at.db, now: at.shelf.now(), person, entry });

  it('is stated with a reason for every piece of the lot, used ones too', async () => {
    const at = await Consigned.open();
    const reading = { read: at.db.read, reader: THE_PROGRAM } as const;
    const { id } = await at.shelf.putDown(3, { lot: 'CONS-2', owner: 'consignment' });
    await at.adjust('damaged', 1, id);
    expect(at.waiting()).toEqual([]);
    expect(await lotsOfNobodyStated(reading)).toContainEqual(
      expect.objectContaining({ itemId: ITEM, lot: 'CONS-2', onShelf: 2 }),
    );
    const entry = {
      itemId: ITEM,
      lot: 'CONS-2',
      before: null,
      lenderId: OWNER,
      because: 'By the delivery note.',
    };
    expect(codesOf(await stating(at, entry, at.shelf.lead))).toEqual(['not-permitted']);
    expect(codesOf(await stating(at, { ...entry, because: 'so' }))).not.toEqual([]);
    done(await stating(at, entry));
    expect(at.waiting()).toMatchObject([{ lot: 'CONS-2', outcome: 'droppedOrDamaged' }]);
    expect((await lotsOfNobodyStated(reading)).some(({ lot }) => lot === 'CONS-2')).toBe(false);
    // the same again finds nothing that is not stated
    expect(codesOf(await stating(at, entry))).toEqual(['conflict']);
    // stated wrongly, it is stated again; once an order has told the owner, it stays
    const change = {
      ...entry,
      before: OWNER,
      lenderId: OTHER_OWNER,
      because: 'The note was of the other firm.',
    };
    done(await stating(at, change));
    expect(at.waiting()).toEqual([]);
    done(await stating(at, { ...change, before: OTHER_OWNER, lenderId: OWNER }));
    await at.sent();
    expect(codesOf(await stating(at, change))).toEqual(['frozen']);
  });

  it('keeps heaps of two owners apart, even of one lot', async () => {
    const at = await Consigned.open(2);
    const other = await at.shelf.putDown(2, { lot: 'CONS-1', owner: 'consignment', lenderId: OTHER_OWNER });
    expect(other.id).not.toBe(at.heap);
    await at.adjust('damaged', 1, other.id);
    expect(at.waiting(OWNER)).toEqual([]);
    expect(at.waiting(OTHER_OWNER)).toHaveLength(1);
    const owners = await listOwners({ read: at.db.read, reader: THE_PROGRAM });
    expect(owners.find(({ id }) => id === OTHER_OWNER)).toMatchObject({ lines: 1, pieces: 1 });
  });
});

it('nothing more is expected of an order once a person says so', async () => {
  const at = await Consigned.open();
  await at.adjust('damaged', 1);
  const id = await at.approved();
  const because = 'They no longer make it.';
  expect(codesOf(await settleUsageOrder({ ...(await at.at(id)), because }))).toEqual(['frozen']);
  done(await markUsageOrderSent({ ...(await at.at(id)), how: 'by post' }));
  done(await settleUsageOrder({ ...(await at.at(id)), because }));
  expect(codesOf(await settleUsageOrder({ ...(await at.at(id)), because }))).toEqual(['frozen']);
});
