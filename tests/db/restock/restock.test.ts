import { asc, desc, eq, sql } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import { approveRestock } from '@/db/operations/restock/approve-restock';
import { closeOrder } from '@/db/operations/restock/close-order';
import { proposeRestock } from '@/db/operations/restock/propose-restock';
import { receiveOrder } from '@/db/operations/restock/receive-order';
import { saveSupplyTerms } from '@/db/operations/restock/save-supply-terms';
import { turnRestockDown } from '@/db/operations/restock/turn-restock-down';
import { findOrder, listOrders } from '@/db/queries/restock/orders';
import { latestProposal } from '@/db/queries/restock/proposal';
import { ledger, pieceMoves, recalls, stock } from '@/db/schema';
import { orderId, restockId } from '@/lib/identity/ids';
import { unbalanced } from '../pieces/balance';
import { dropped, messagesOf, NOW, pathsOf, type Restocking, restocking, TWO_A_WEEK } from './hospital';

const LATER = '2026-01-19T10:00:00.000Z';
const PLACE = 'place_implant-cupboard';

let at: Restocking;
beforeEach(async () => {
  at = await restocking();
});

const propose = (now = NOW, person = at.keeper) =>
  proposeRestock({ db: at.db, now, newId: at.newId, person });

async function proposed(now = NOW) {
  const done = await propose(now);
  if (!done.ok) throw new Error(messagesOf(done));
  const found = await latestProposal(at.db);
  if (!found) throw new Error('it was just proposed');
  const line = found.lines.find(({ itemId }) => itemId === at.screw.id);
  return { found, line };
}

async function asking(entry: unknown, person = at.manager) {
  const found = await latestProposal(at.db);
  if (!found) throw new Error('nothing is proposed');
  const { db, newId } = at;
  return {
    db,
    now: NOW,
    newId,
    person,
    restockId: restockId.parse(found.id),
    baseRevision: found.revision,
    entry,
  };
}

/** A proposal in which nothing but the screw is ordered, and of that so many. */
async function ordered(pieces: number) {
  await dropped(at, TWO_A_WEEK);
  const { found } = await proposed();
  const changes = found.lines.flatMap(({ id, itemId, proposed: was }) =>
    itemId === at.screw.id
      ? pieces === was
        ? []
        : [{ lineId: id, pieces, because: 'As many as we need for this' }]
      : [{ lineId: id, pieces: 0, because: 'Not in this order, for the test' }],
  );
  const done = await approveRestock(await asking({ changes }));
  if (!done.ok) throw new Error(messagesOf(done));
  const [order] = done.value.orders;
  if (!order) throw new Error('one order was made');
  return order;
}

async function at_(order: string, entry: unknown, { person = at.keeper, now = LATER } = {}) {
  const found = await findOrder(at.db, order);
  if (!found) throw new Error('there is no such order');
  const { db, newId } = at;
  return { db, now, newId, person, orderId: orderId.parse(order), baseRevision: found.revision, entry };
}

async function part(order: string, more: Record<string, unknown> = {}) {
  const found = await findOrder(at.db, order);
  const [line] = found?.lines ?? [];
  return {
    lineId: line?.id,
    quantity: 5,
    lot: 'L-77',
    useBy: '2030-06-30',
    form: form(line?.suppliedSterile),
    ...more,
  };
}
const form = (sterile: boolean | null | undefined) => (sterile ? 'sterilePacked' : 'unsterile');

const lastAct = async () => (await at.db.read.select().from(ledger).orderBy(desc(ledger.seq)).limit(1))[0];

describe('a proposal', () => {
  it('says of each line why, from the record, the terms and what is promised', async () => {
    await dropped(at, TWO_A_WEEK);
    const { found, line } = await proposed();
    // two a week for the 5 + 7 days of lead and review: 24 ÷ 7 expected; the screw is of must-have class 2: 98 %
    expect(line).toMatchObject({ mustHaveClass: 2, packOf: 5, missing: [], approved: null });
    expect(line?.answer).toMatchObject({ coverDays: 12, demandClass: { interval: 1 } });
    expect(line?.answer?.expected).toBeCloseTo(24 / 7, 6);
    expect(line?.answer?.serviceWith).toBeGreaterThanOrEqual(0.98);
    expect(line?.sentence).toMatch(/^Order 10 \(2 × 5\): 8 cover the 12 days /);
    expect(line?.working.map(({ label }) => label)).toContain('Order up to');
    expect(found).toMatchObject({ number: 'RS-0001', state: 'proposed', proposedBy: 'Dilys Harrow' });
    expect(found.lines.every(({ proposed: pieces, packOf }) => pieces % packOf === 0)).toBe(true);
    expect(found.lines.length + found.enough + found.withoutUse).toBe(found.lookedAt);
    expect(await lastAct()).toMatchObject({ action: 'propose-restock', subjectId: found.id });
  });

  it('does not forecast from a record that is too short, but proposes what is promised and not there', async () => {
    const { found } = await proposed();
    const promised = found.lines.filter(({ proposed: pieces, answer }) => pieces > 0 && answer === null);
    expect(promised.length).toBeGreaterThan(10);
    for (const { missing, onHand, onOrder, committed, toRefill, proposed: pieces, packOf } of promised) {
      expect(missing.join()).toContain('on record, 13 are needed');
      const lacking = committed + toRefill - onHand - onOrder;
      expect(lacking).toBeGreaterThan(0);
      expect(pieces).toBe(Math.ceil(lacking / packOf) * packOf);
    }
  });

  it('is the stock keeper’s or the manager’s to have worked out; the earlier open one is superseded', async () => {
    expect(messagesOf(await propose(NOW, at.technician))).toContain('can’t have a restock worked out');
    const first = await proposed();
    await proposed();
    expect(
      await approveRestock({
        ...(await asking({ changes: [] })),
        restockId: restockId.parse(first.found.id),
      }),
    ).toMatchObject({
      ok: false,
      refusal: { because: 'frozen' },
    });
  });

  it('of a maker whose lead nobody stated establishes nothing; the term stated, it does', async () => {
    await dropped(at, TWO_A_WEEK);
    const terms = {
      leadDays: null,
      leadSdDays: null,
      reviewDays: null,
      servicePercent: null,
      shelfLifeDays: null,
    };
    const save = (baseRevision: number, more: object, person = at.keeper) =>
      saveSupplyTerms({
        db: at.db,
        now: NOW,
        newId: at.newId,
        person,
        entry: { of: { kind: 'maker', id: 'maker_carrowby' }, baseRevision, terms: { ...terms, ...more } },
      });
    expect(messagesOf(await save(1, {}, at.technician))).toContain('can’t state terms of supply');
    expect(await save(0, {})).toMatchObject({ ok: false, refusal: { because: 'conflict' } });
    expect(await save(1, {})).toMatchObject({ ok: true, value: { revision: 2 } });
    const { line } = await proposed();
    expect(line?.missing).toEqual(['nobody has stated how long the maker takes']);
    // the item’s own terms come before its maker’s
    await saveSupplyTerms({
      db: at.db,
      now: NOW,
      newId: at.newId,
      person: at.keeper,
      entry: {
        of: { kind: 'item', id: at.screw.id },
        baseRevision: 0,
        terms: { ...terms, leadDays: 21, reviewDays: 14, servicePercent: 99.5 },
      },
    });
    expect((await proposed()).line?.answer).toMatchObject({ coverDays: 35 });
    expect((await proposed()).line?.answer?.serviceWith).toBeGreaterThanOrEqual(0.995);
  });
});

describe('approving', () => {
  it('is another act than proposing, and the manager’s alone', async () => {
    await proposed();
    const refused = await approveRestock(await asking({ changes: [] }, at.keeper));
    expect(messagesOf(refused)).toContain('can’t approve a restock');
  });

  it('makes one order for each maker, of whole packs, expected by the slowest known lead', async () => {
    await dropped(at, TWO_A_WEEK);
    const { found } = await proposed();
    const done = await approveRestock(await asking({ changes: [] }));
    if (!done.ok) throw new Error(messagesOf(done));
    const makers = new Set(found.lines.filter(({ proposed: n }) => n > 0).map(({ maker }) => maker));
    const orders = await listOrders(at.db);
    expect(new Set(orders.map(({ maker }) => maker))).toEqual(makers);
    expect(orders.map(({ maker, expectedOn }) => [maker, expectedOn]).sort()).toEqual([
      ['Carrowby Implants', '2026-01-19'],
      // nobody has stated how long this one takes
      ['Pelham Tarn Instruments', null],
      ['Sallowfen Surgical', '2026-01-24'],
    ]);
    expect(orders.reduce((sum, { ordered: n }) => sum + n, 0)).toBe(
      found.lines.reduce((sum, { proposed: n }) => sum + n, 0),
    );
    expect((await latestProposal(at.db))?.state).toBe('approved');
    // what is on order now is not proposed again
    const again = await proposed();
    expect(again.line).toBeUndefined();
    expect(again.found.lines.filter(({ proposed: n }) => n > 0)).toEqual([]);
  });

  it('keeps what was changed and why, in whole packs; all faults at once', async () => {
    await dropped(at, TWO_A_WEEK);
    const { found, line } = await proposed();
    const other = found.lines.find(({ id }) => id !== line?.id);
    const amiss = await approveRestock(
      await asking({
        changes: [
          { lineId: line?.id, pieces: 7, because: 'There is a promotion on' },
          { lineId: 'restockLine_none', pieces: 5, because: 'There is a promotion on' },
        ],
      }),
    );
    expect(pathsOf(amiss)).toEqual(['changes.0.pieces', 'changes.1.lineId']);
    const unsaid = await approveRestock(
      await asking({ changes: [{ lineId: other?.id, pieces: 0, because: '' }] }),
    );
    expect(pathsOf(unsaid)).toEqual(['changes.0.because']);
    await approveRestock(
      await asking({ changes: [{ lineId: line?.id, pieces: 25, because: 'A long weekend is coming' }] }),
    );
    const after = (await latestProposal(at.db))?.lines.find(({ id }) => id === line?.id);
    expect(after).toMatchObject({ approved: 25, changedBecause: 'A long weekend is coming' });
    expect((await lastAct())?.detail).toMatchObject({
      changed: [{ itemId: at.screw.id, proposed: 10, approved: 25, because: 'A long weekend is coming' }],
    });
  });

  it('of nothing is refused: a proposal is turned down with a reason instead', async () => {
    const { found } = await proposed();
    const none = found.lines.map(({ id }) => ({
      lineId: id,
      pieces: 0,
      because: 'Nothing at all this time',
    }));
    expect(messagesOf(await approveRestock(await asking({ changes: none })))).toContain(
      'Nothing is left to order',
    );
    expect(pathsOf(await turnRestockDown(await asking({ because: 'no' })))).toEqual(['because']);
    expect(await turnRestockDown(await asking({ because: 'The budget year ends next week' }))).toMatchObject({
      ok: true,
    });
    expect(await latestProposal(at.db)).toMatchObject({ state: 'turnedDown', decidedBy: 'Gwen Sallis' });
    expect(await listOrders(at.db)).toEqual([]);
  });
});

describe('receiving', () => {
  it('puts each part on its own heap with its lot and use-by, and the journal agrees', async () => {
    const order = await ordered(15);
    const first = await part(order.id);
    const second = await part(order.id, { lot: null, useBy: '2031-01-31' });
    const done = await receiveOrder(await at_(order.id, { placeId: PLACE, parts: [first, second] }));
    expect(done).toMatchObject({ ok: true, value: { toCome: 5 } });
    const heaps = await at.db.read
      .select()
      .from(stock)
      .where(eq(stock.itemId, at.screw.id))
      .orderBy(asc(stock.useBy));
    expect(heaps.map(({ lot, useBy, quantity, placeId }) => [lot, useBy, quantity, placeId])).toEqual([
      ['L-77', '2030-06-30', 5, PLACE],
      [null, '2031-01-31', 5, PLACE],
    ]);
    const moves = await at.db.read.select().from(pieceMoves).where(eq(pieceMoves.act, 'received'));
    expect(moves.map(({ lot, quantity, source, toStockId }) => [lot, quantity, source, toStockId])).toEqual([
      ['L-77', 5, first.lineId, heaps[0]?.id],
      [null, 5, first.lineId, heaps[1]?.id],
    ]);
    expect(await unbalanced(at.db)).toEqual([]);
    // what came is at hand, what did not is still on order
    expect((await findOrder(at.db, order.id))?.lines).toMatchObject([{ ordered: 15, here: 10 }]);
    const heap = await receiveOrder(await at_(order.id, { placeId: PLACE, parts: [first] }));
    expect(heap).toMatchObject({ ok: true, value: { toCome: 0 } });
    expect(await findOrder(at.db, order.id)).toMatchObject({ state: 'closed', closedBecause: null });
    expect(await unbalanced(at.db)).toEqual([]);
  });

  it('refuses more than was ordered, what is past its use-by, what comes otherwise, and unknown places: all at once', async () => {
    const order = await ordered(10);
    const good = await part(order.id);
    const other = good.form === 'unsterile' ? 'sterilePacked' : 'unsterile';
    const parts = [
      { ...good, quantity: 6 },
      { ...good, quantity: 5, useBy: '2026-01-18' },
      { ...good, quantity: 1, form: other },
    ];
    const amiss = await receiveOrder(await at_(order.id, { placeId: 'place_none', parts }));
    expect(pathsOf(amiss)).toEqual(['placeId', 'parts.1.useBy', 'parts.2.form', 'parts.2.quantity']);
    // good through the day printed
    const today = await receiveOrder(
      await at_(order.id, { placeId: PLACE, parts: [{ ...good, useBy: '2026-01-19' }] }),
    );
    expect(today.ok).toBe(true);
  });

  it('takes nothing that an open recall names', async () => {
    const order = await ordered(10);
    await at.db.tx((write) =>
      write.insert(recalls).values({
        id: 'recall_restock',
        number: 'R-1',
        kind: 'lot',
        itemId: at.screw.id,
        lot: 'L-77',
        reason: 'A notice of its maker.',
        isRehearsal: false,
        found: {},
        openedBy: at.manager.id,
        openedAt: NOW,
        revision: 1,
      }),
    );
    const named = await receiveOrder(await at_(order.id, { placeId: PLACE, parts: [await part(order.id)] }));
    expect(pathsOf(named)).toEqual(['parts.0.lot']);
    const other = await receiveOrder(
      await at_(order.id, { placeId: PLACE, parts: [await part(order.id, { lot: 'L-78' })] }),
    );
    expect(other.ok).toBe(true);
  });

  it('is the keeper’s, and of an order as it was seen', async () => {
    const order = await ordered(10);
    const entry = { placeId: PLACE, parts: [await part(order.id)] };
    const seen = await at_(order.id, entry);
    expect(messagesOf(await receiveOrder({ ...seen, person: at.technician }))).toContain(
      'can’t receive orders',
    );
    expect((await receiveOrder(seen)).ok).toBe(true);
    // the same twice is not put down twice
    expect(await receiveOrder(seen)).toMatchObject({ ok: false, refusal: { because: 'conflict' } });
    expect((await findOrder(at.db, order.id))?.lines).toMatchObject([{ here: 5 }]);
  });
});

describe('closing', () => {
  it('asks why where not all came; nothing comes afterwards, and nothing is on order', async () => {
    const order = await ordered(10);
    await receiveOrder(await at_(order.id, { placeId: PLACE, parts: [await part(order.id)] }));
    expect(pathsOf(await closeOrder(await at_(order.id, { because: null })))).toEqual(['because']);
    const because = 'The maker can’t send the rest before summer';
    expect((await closeOrder(await at_(order.id, { because }))).ok).toBe(true);
    expect(await lastAct()).toMatchObject({
      action: 'close-order',
      detail: { because, notCome: [{ itemId: at.screw.id, toCome: 5 }] },
    });
    const more = await receiveOrder(await at_(order.id, { placeId: PLACE, parts: [await part(order.id)] }));
    expect(more).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    expect((await proposed(LATER)).line).toMatchObject({ onHand: 5, onOrder: 0 });
  });
});

describe('the database itself', () => {
  it('keeps what was proposed, ordered and received', async () => {
    const order = await ordered(10);
    const [{ id: part_ = '' } = {}] = [await part(order.id)].map(({ lineId }) => ({ id: String(lineId) }));
    await receiveOrder(await at_(order.id, { placeId: PLACE, parts: [await part(order.id)] }));
    const run = (statement: string) => at.db.tx(async (write) => write.run(sql.raw(statement)));
    for (const statement of [
      `UPDATE restocks SET number = 'RS-0009'`,
      `DELETE FROM restocks`,
      `UPDATE restock_lines SET approved = 20`,
      `UPDATE restock_lines SET sentence = 'Because.'`,
      `DELETE FROM restock_lines`,
      `UPDATE supply_order_lines SET ordered = 5`,
      `DELETE FROM supply_order_lines`,
      `UPDATE supply_order_parts SET lot = 'L-78'`,
      `DELETE FROM supply_order_parts`,
      `DELETE FROM supply_orders`,
      // not all came
      `UPDATE supply_orders SET state = 'closed', closed_at = '${LATER}', closed_by = '${at.keeper.id}'`,
      `INSERT INTO supply_order_parts SELECT 'orderPart_more', '${part_}', 6, NULL, NULL, place_id, stock_id, person_id, done_at, entered_at FROM supply_order_parts`,
    ])
      await expect(run(statement), statement).rejects.toThrow();
  });
});
