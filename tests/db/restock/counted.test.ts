import { eq } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import { receiveOrder } from '@/db/operations/restock/receive-order';
import { receiveDelivery } from '@/db/operations/stock/receive-delivery';
import { findItem } from '@/db/queries/catalogueItem';
import { findOrder } from '@/db/queries/restock/orders';
import { receivedItem } from '@/db/queries/shelf/receiving';
import {
  deliveryLines,
  items,
  ledger,
  pieceMoves,
  restockLines,
  restocks,
  stock,
  supplyOrderLines,
  supplyOrders,
} from '@/db/schema';
import { orderId } from '@/lib/identity/ids';
import { unbalanced } from '../pieces/balance';
import { NOW, pathsOf, type Restocking, restocking } from './hospital';

const PLACE = 'place_implant-cupboard';
/** A lot of which some lies on the shelf already. */
const KNOWN = { lot: 'KNOWN-1', useBy: '2030-06-30' };

let at: Restocking;
let sterile: boolean;
beforeEach(async () => {
  at = await restocking();
  await anOrder('a', 10);
  await at.db.tx((write) =>
    write.insert(stock).values({
      ...{ id: 'stock_known', itemId: at.screw.id, form: 'unsterile', ...KNOWN, quantity: 0, owner: 'ours' },
      ...{ placeId: PLACE, revision: 1 },
    }),
  );
  const [item] = await at.db.read.select().from(items).where(eq(items.id, at.screw.id));
  sterile = item?.suppliedSterile === true;
});

/** An order of the screw and of nothing else, as an approved proposal leaves it. */
async function anOrder(name: string, ordered: number): Promise<void> {
  const [item] = await at.db.read.select().from(items).where(eq(items.id, at.screw.id));
  const makerId = item?.makerId ?? '';
  const number = String(name.charCodeAt(0));
  await at.db.tx(async (write) => {
    await write.insert(restocks).values({
      ...{ id: `restock_${name}`, number: `RS-90${number}`, state: 'approved', proposedBy: at.keeper.id },
      ...{ proposedAt: NOW, lookedAt: 1, enough: 0, withoutUse: 0, settings: {}, revision: 2 },
      ...{ decidedBy: at.manager.id, decidedAt: NOW },
    });
    await write.insert(restockLines).values({
      ...{ id: `restockLine_${name}`, restockId: `restock_${name}`, itemId: at.screw.id, makerId },
      ...{
        proposed: ordered,
        packOf: 1,
        onHand: 0,
        onOrder: 0,
        committed: 0,
        toRefill: 0,
        sentence: 'Order.',
      },
      ...{ input: {}, working: [], missing: [], approved: ordered },
    });
    await write.insert(supplyOrders).values({
      ...{
        id: `order_${name}`,
        number: `OR-90${number}`,
        restockId: `restock_${name}`,
        makerId,
        state: 'open',
      },
      ...{ orderedBy: at.manager.id, orderedAt: NOW, expectedOn: '2026-01-19', revision: 1 },
    });
    await write.insert(supplyOrderLines).values({
      ...{ id: `orderLine_${name}`, orderId: `order_${name}`, restockLineId: `restockLine_${name}` },
      ...{ itemId: at.screw.id, ordered, packOf: 1, unitPence: 1_234 },
    });
  });
}

const line = (id: string, change: object = {}) => ({
  ...{ id: `deliveryLine_${id}`, itemId: at.screw.id, form: sterile ? 'sterilePacked' : 'unsterile' },
  ...{ lot: 'NEW-1', useBy: '2031-01-31', count: 4, unit: 'pieces', placeId: PLACE, owner: 'ours' },
  ...{ held: null, useByReadAgain: false, scanId: null, orderLineId: 'orderLine_a', ...change },
});
let notes = 0;
const receive = (lines: object[], person = at.keeper) => {
  notes += 1;
  const head = { id: `delivery_${notes}`, supplier: 'Carrowby', reference: `N-${notes}` };
  const delivery = { ...head, arrivedOn: '2026-01-14', lines };
  return receiveDelivery({ db: at.db, now: NOW, newId: at.newId, person, delivery });
};
const order = async (id = 'order_a') => {
  const found = await findOrder(at.db, id);
  if (!found) throw new Error('there is no such order');
  return found;
};
const acts = async () => (await at.db.read.select().from(ledger)).map(({ action }) => action);

describe('a delivery that holds what is on order', () => {
  it('is offered the open orders of the item, the oldest first, and never decides by itself', async () => {
    await anOrder('b', 5);
    const item = await findItem(at.db, at.screw.id);
    if (!item) throw new Error('the screw is in the catalogue');
    const offered = async () => (await receivedItem(at.db, item.item)).onOrder;
    expect(await offered()).toEqual([
      { orderLineId: 'orderLine_a', number: 'OR-9097', toCome: 10, expectedOn: '2026-01-19' },
      { orderLineId: 'orderLine_b', number: 'OR-9098', toCome: 5, expectedOn: '2026-01-19' },
    ]);
    expect((await receive([line('1', { orderLineId: null })])).ok).toBe(true);
    expect(await offered()).toHaveLength(2);
    expect((await order()).lines[0]?.here).toBe(0);
  });

  it('is counted to the order its keeper names, in the same write: here, and what is still to come', async () => {
    expect(await receive([line('1')])).toMatchObject({ ok: true, value: { pieces: 4 } });
    const now = await order();
    expect(now).toMatchObject({ state: 'open', revision: 2, lines: [{ here: 4 }] });
    const [row] = await at.db.read.select().from(deliveryLines);
    expect(row?.orderLineId).toBe('orderLine_a');
    expect(now.parts).toMatchObject([{ quantity: 4, lot: 'NEW-1', useBy: '2031-01-31', by: at.keeper.name }]);
    const [move] = await at.db.read.select().from(pieceMoves).where(eq(pieceMoves.source, 'deliveryLine_1'));
    // at the price it was ordered for
    expect(move).toMatchObject({ act: 'received', quantity: 4, unitPence: 1_234 });
    expect((await acts()).slice(-2)).toEqual(['receive-delivery', 'receive-order']);
    expect(await unbalanced(at.db)).toEqual([]);
  });

  it('closes the order of which all has come by it, over lines of different lots', async () => {
    expect((await receive([line('1', { count: 6 }), line('2', { lot: 'NEW-2', count: 4 })])).ok).toBe(true);
    expect(await order()).toMatchObject({ state: 'closed', closedBy: at.keeper.name, lines: [{ here: 10 }] });
  });

  it('is refused whole where more is counted than is still to come, and says how much that is', async () => {
    const outcome = await receive([line('1', { count: 6 }), line('2', { lot: 'NEW-2', count: 5 })]);
    expect(pathsOf(outcome)).toEqual(['lines.1.orderLineId']);
    expect(await order()).toMatchObject({ revision: 1, parts: [] });
    expect(await at.db.read.select().from(deliveryLines)).toEqual([]);
  });

  it('counts nothing that is held, on consignment, of another item or order, or by somebody who may not', async () => {
    const amiss = await receive([
      line('1', { held: 'goesBack' }),
      line('2', { lot: 'NEW-2', owner: 'consignment' }),
      line('3', { lot: 'NEW-3', orderLineId: 'orderLine_none' }),
      line('4', { itemId: 'item_sf-l27-24', form: 'sterilePacked', lot: 'NEW-4' }),
    ]);
    expect(pathsOf(amiss)).toEqual([0, 1, 2, 3].map((n) => `lines.${n}.orderLineId`));
    // whoever may receive a delivery may not count it to an order
    expect(pathsOf(await receive([line('1')], at.technician))).toEqual(['lines.0.orderLineId']);
    expect((await receive([line('1', { orderLineId: null })], at.technician)).ok).toBe(true);
    // of an order that is closed nothing is counted any more
    expect((await receive([line('5', { count: 10, lot: 'NEW-5' })])).ok).toBe(true);
    expect(pathsOf(await receive([line('6', { count: 1, lot: 'NEW-6' })]))).toEqual(['lines.0.orderLineId']);
  });
});

describe('a lot that is known with another use-by', () => {
  const other = { lot: KNOWN.lot, useBy: '2031-06-30' };
  const onOrder = async (part: object) => {
    const { revision } = await order();
    const whole = {
      lineId: 'orderLine_a',
      quantity: 2,
      form: sterile ? 'sterilePacked' : 'unsterile',
      ...part,
    };
    return receiveOrder({
      ...{ db: at.db, now: NOW, newId: at.newId, person: at.keeper, orderId: orderId.parse('order_a') },
      ...{ baseRevision: revision, entry: { placeId: PLACE, parts: [whole] } },
    });
  };

  it('is asked about wherever it is received, by the same sentence, and taken once it was read again', async () => {
    const asked = await onOrder(other);
    const delivered = await receive([line('1', { ...other, orderLineId: null })]);
    if (asked.ok || delivered.ok) throw new Error('both must ask');
    const sentence = ({ path, code, message }: (typeof asked.refusal.problems)[number]) => ({
      ...{ field: path.at(-1), code, message },
    });
    expect(asked.refusal.problems.map(sentence)).toEqual(delivered.refusal.problems.map(sentence));
    expect(asked.refusal.problems.map(sentence)).toMatchObject([{ field: 'useBy', code: 'other-use-by' }]);
    expect((await order()).parts).toEqual([]);
    expect((await onOrder({ ...other, useByReadAgain: true })).ok).toBe(true);
  });

  it('is not asked about with the use-by on record, or without a lot', async () => {
    expect((await onOrder(KNOWN)).ok).toBe(true);
    expect((await onOrder({ lot: null, useBy: '2031-06-30' })).ok).toBe(true);
  });
});
