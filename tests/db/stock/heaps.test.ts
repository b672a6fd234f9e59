import { eq } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import { adjustStock } from '@/db/operations/stock/adjust-stock';
import { holdStock } from '@/db/operations/stock/hold-stock';
import { letStockGo } from '@/db/operations/stock/let-stock-go';
import { moveStock } from '@/db/operations/stock/move-stock';
import { ledger, packs, pieceMoves, recalls, stock, usageMonths } from '@/db/schema';
import { placeId } from '@/lib/identity/ids';
import { unbalanced } from '../pieces/balance';
import { codesOf, done, Shelf } from './shelf';

let shelf: Shelf;
beforeEach(async () => {
  shelf = await Shelf.open();
});

const STORES = placeId.parse('place_general-stores');
const CONSIGNMENT = placeId.parse('place_consignment');

const packsInCupboard = () => shelf.putDown(6);

const moves = (id: string) => shelf.db.read.select().from(pieceMoves).where(eq(pieceMoves.source, id));

describe('moving stock', () => {
  it('moves a part onto the heap of its kind there, and the rest of it stays', async () => {
    const heap = await packsInCupboard();
    const to = done(await moveStock({ ...(await shelf.at(heap.id)), pieces: 2, placeId: STORES })).stockId;
    expect(to).not.toBe(heap.id);
    expect(await shelf.quantity(heap.id)).toBe(heap.quantity - 2);
    expect(await shelf.heap(to)).toMatchObject({
      row: { quantity: 2, lot: heap.lot, useBy: heap.useBy, placeId: STORES },
    });
    // a second part joins the first
    const again = done(await moveStock({ ...(await shelf.at(heap.id)), pieces: 1, placeId: STORES })).stockId;
    expect(again).toBe(to);
    expect(await shelf.quantity(to)).toBe(3);
    expect(await unbalanced(shelf.db)).toEqual([]);
  });

  it('moves the whole heap as it is, so that its label still names it', async () => {
    const heap = await packsInCupboard();
    const request = await shelf.at(heap.id);
    const to = done(await moveStock({ ...request, pieces: heap.quantity, placeId: STORES })).stockId;
    expect(to).toBe(heap.id);
    expect((await shelf.heap(heap.id)).row).toMatchObject({ placeId: STORES, quantity: heap.quantity });
    expect(await unbalanced(shelf.db)).toEqual([]);
  });

  it('is refused for more than is free, to the same place, to none, and by who may not', async () => {
    const heap = await packsInCupboard();
    const asked = await shelf.at(heap.id);
    const cases: [object, string][] = [
      [{ pieces: heap.quantity + 1, placeId: STORES }, 'too-many'],
      [{ pieces: 0, placeId: STORES }, 'whole-pieces'],
      [{ pieces: 1.5, placeId: STORES }, 'whole-pieces'],
      [{ pieces: 1, placeId: heap.placeId }, 'same-place'],
      [{ pieces: 1, placeId: 'place_nowhere' }, 'no-such-place'],
      [{ pieces: 1, placeId: STORES, person: shelf.surgeon }, 'not-permitted'],
      [{ pieces: 1, placeId: STORES, baseRevision: 99 }, 'conflict'],
      [{ pieces: 1, placeId: STORES, stockId: 'stock_nowhere' }, 'not-found'],
    ];
    for (const [change, code] of cases)
      expect(codesOf(await moveStock({ ...asked, ...change } as never)), code).toEqual([code]);
    expect(await shelf.quantity(heap.id)).toBe(heap.quantity);
  });

  it('tells two people at once apart: one moves, the other is told that it changed', async () => {
    const heap = await packsInCupboard();
    const asked = await shelf.at(heap.id);
    const both = await Promise.all([
      moveStock({ ...asked, pieces: 2, placeId: STORES }),
      moveStock({ ...asked, person: shelf.other, pieces: 2, placeId: CONSIGNMENT }),
    ]);
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
    expect(both.flatMap(codesOf)).toEqual(['conflict']);
    expect(await shelf.quantity(heap.id)).toBe(heap.quantity - 2);
    expect(await unbalanced(shelf.db)).toEqual([]);
  });
});

describe('correcting the record of a heap', () => {
  it('keeps each reason as what it is in the journal, and the heap with it', async () => {
    const heap = await packsInCupboard();
    const used = async () =>
      (await shelf.db.read.select().from(usageMonths).where(eq(usageMonths.itemId, heap.itemId))).reduce(
        (sum, row) => ({ wasted: sum.wasted + row.wasted, notFound: sum.notFound + row.notFound }),
        { wasted: 0, notFound: 0 },
      );
    const before = await used();
    const expected = [
      ['found', 2, 'found', 'shelf'],
      ['notFound', 1, 'notFound', 'shelf'],
      ['damaged', 1, 'wasted', 'damaged'],
      ['opened', 1, 'wasted', 'opened'],
      ['sentBack', 1, 'sentBack', 'toOwner'],
      ['enteredTooFew', 4, 'received', 'enteredWrongly'],
      ['enteredTooMany', 3, 'sentBack', 'enteredWrongly'],
    ] as const;
    for (const [reason, pieces] of expected)
      done(
        await adjustStock({ ...(await shelf.at(heap.id)), reason, pieces, note: 'As told by the store.' }),
      );
    expect((await moves(heap.id)).map(({ act, reason, quantity }) => [act, reason, quantity])).toEqual(
      expected.map(([, pieces, act, reason]) => [act, reason, pieces]),
    );
    expect(await shelf.quantity(heap.id)).toBe(heap.quantity + 2 - 1 - 1 - 1 - 1 + 4 - 3);
    expect(await unbalanced(shelf.db)).toEqual([]);
    // what was entered wrongly is neither use nor loss
    expect(await used()).toEqual({ wasted: before.wasted + 2, notFound: before.notFound + 1 });
    const acts = await shelf.db.read.select().from(ledger).where(eq(ledger.action, 'adjust-stock'));
    expect(acts).toHaveLength(7);
  });

  it('asks why something was entered wrongly, and for a use-by that is past before it is discarded as such', async () => {
    const heap = await packsInCupboard();
    const asked = { ...(await shelf.at(heap.id)), pieces: 1, note: '' };
    expect(codesOf(await adjustStock({ ...asked, reason: 'enteredTooMany' }))).toEqual(['needed']);
    expect(codesOf(await adjustStock({ ...asked, reason: 'pastUseBy' }))).toEqual(['not-past']);
    expect(codesOf(await adjustStock({ ...asked, reason: 'notFound', pieces: 999 }))).toEqual(['too-many']);
    expect(codesOf(await adjustStock({ ...asked, reason: 'found', pieces: -1 }))).toEqual(['whole-pieces']);
    expect(codesOf(await adjustStock({ ...asked, reason: 'found', person: shelf.surgeon }))).toEqual([
      'not-permitted',
    ]);
    await shelf.db.tx((write) =>
      write.update(stock).set({ useBy: '2026-01-13' }).where(eq(stock.id, heap.id)),
    );
    done(await adjustStock({ ...asked, reason: 'pastUseBy' }));
    expect((await moves(heap.id)).map(({ act, reason }) => [act, reason])).toEqual([['wasted', 'pastUseBy']]);
  });

  it('ends the labels of pouches that go into the bin, and takes labelled pouches only together', async () => {
    const heap = await shelf.putDown(3, { form: 'pouch', lot: null, placeId: 'place_pouch-1' });
    await shelf.db.tx((write) =>
      write.insert(packs).values({
        id: 'pack_test-label',
        number: 'P9999999-1',
        kind: 'pouch',
        itemId: heap.itemId,
        barrier: 'pouch',
        packedBy: shelf.lead.id,
        packedAt: shelf.now(),
        contents: [],
        stockId: heap.id,
        state: 'sterile',
        revision: 1,
      }),
    );
    const asked = await shelf.at(heap.id);
    expect(codesOf(await adjustStock({ ...asked, reason: 'damaged', pieces: 1, note: '' }))).toEqual([
      'labelled',
    ]);
    expect(codesOf(await moveStock({ ...asked, pieces: 1, placeId: STORES }))).toEqual(['labelled']);
    done(await adjustStock({ ...asked, reason: 'damaged', pieces: 3, note: '' }));
    const [after] = await shelf.db.read.select().from(packs).where(eq(packs.id, 'pack_test-label'));
    expect(after?.state).toBe('opened');
  });
});

describe('holding stock', () => {
  it('holds a part as a heap of its own, which keeps its hold when it is moved', async () => {
    const heap = await packsInCupboard();
    const request = { ...(await shelf.at(heap.id)), because: 'wrongLabel' as const, note: '' };
    const held = done(await holdStock({ ...request, pieces: 1 })).stockId;
    expect(await shelf.heap(held)).toMatchObject({ row: { quantity: 1, heldBecause: 'wrongLabel' } });
    expect(await shelf.quantity(heap.id)).toBe(heap.quantity - 1);
    done(await moveStock({ ...(await shelf.at(held)), pieces: 1, placeId: STORES }));
    expect((await shelf.heap(held)).row).toMatchObject({ placeId: STORES, heldBecause: 'wrongLabel' });
    expect(await unbalanced(shelf.db)).toEqual([]);
    expect(
      codesOf(await holdStock({ ...(await shelf.at(held)), because: 'recall', note: '', pieces: 1 })),
    ).toEqual(['frozen']);
  });

  it('is let go by who may, who proves it and says why; what a load or an open recall holds is not', async () => {
    const heap = await packsInCupboard();
    const hold = async (because: 'wrongLabel' | 'recall') =>
      done(await holdStock({ ...(await shelf.at(heap.id)), because, note: '', pieces: heap.quantity }));
    await hold('wrongLabel');
    const at = await shelf.at(heap.id, shelf.lead);
    const good = {
      ...at,
      reason: 'Labels read and right.',
      attestation: shelf.proof(shelf.lead, 'iLiftThisHold', at.now),
    };
    const keeper = {
      ...good,
      person: shelf.keeper,
      attestation: shelf.proof(shelf.keeper, 'iLiftThisHold', at.now),
    };
    expect(codesOf(await letStockGo(keeper))).toEqual(['not-permitted']);
    expect(
      codesOf(await letStockGo({ ...good, attestation: shelf.proof(shelf.lead, 'iPacked', at.now) })),
    ).toEqual(['not-permitted']);
    expect(codesOf(await letStockGo({ ...good, reason: ' ' }))).toEqual(['needed']);
    done(await letStockGo(good));
    expect((await shelf.heap(heap.id)).row.heldBecause).toBeNull();
    // what a recall holds stays as long as the recall is open
    await hold('recall');
    const again = async () => {
      const later = await shelf.at(heap.id, shelf.lead);
      return letStockGo({
        ...good,
        ...later,
        attestation: shelf.proof(shelf.lead, 'iLiftThisHold', later.now),
      });
    };
    const recall = {
      ...{ id: 'recall_test-1', number: 'R-1', kind: 'lot', itemId: heap.itemId, lot: heap.lot },
      ...{ reason: 'A notice of its maker.', isRehearsal: false, found: {}, openedBy: shelf.lead.id },
      ...{ openedAt: shelf.now(), revision: 1 },
    };
    await shelf.db.tx((write) => write.insert(recalls).values(recall));
    expect(codesOf(await again())).toEqual(['frozen']);
    const ended = { closedBy: shelf.lead.id, closedWith: shelf.manager.id, closedAt: shelf.now() };
    await shelf.db.tx((write) =>
      write.update(recalls).set({ ...ended, closedBecause: 'All is accounted for.', balance: {} }),
    );
    done(await again());
    // a hold of its load is not let go on the shelf
    await shelf.db.tx((write) =>
      write.update(stock).set({ heldBecause: 'loadUnknown' }).where(eq(stock.id, heap.id)),
    );
    expect(codesOf(await again())).toEqual(['frozen']);
  });
});
