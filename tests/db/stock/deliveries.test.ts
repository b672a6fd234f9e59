import { eq, sql as raw } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import { receiveDelivery } from '@/db/operations/stock/receive-delivery';
import { deliveries, deliveryLines, items, ledger, pieceMoves, recalls, stock } from '@/db/schema';
import { unbalanced } from '../pieces/balance';
import { codesOf, done, Shelf } from './shelf';

let shelf: Shelf;
beforeEach(async () => {
  shelf = await Shelf.open();
});

const line = (id: string, change: object = {}) => ({
  id: `deliveryLine_${id}`,
  itemId: 'item_sf-l27-24',
  form: 'sterilePacked',
  lot: 'L27-7001',
  useBy: '2028-03-31',
  count: 4,
  unit: 'pieces',
  placeId: 'place_implant-cupboard',
  owner: 'ours',
  held: null,
  useByReadAgain: false,
  scanId: null,
  ...change,
});
const sent = (lines: object[], change: object = {}) => ({
  id: 'delivery_a',
  supplier: 'Northfold Implants',
  reference: 'DN-20771',
  arrivedOn: '2026-01-14',
  lines,
  ...change,
});
const receive = (delivery: unknown, person = shelf.keeper) =>
  receiveDelivery({ db: shelf.db, now: shelf.now(), newId: shelf.newId, person, delivery });

const all = async () => ({
  deliveries: (await shelf.db.read.select().from(deliveries)).length,
  lines: (await shelf.db.read.select().from(deliveryLines)).length,
  moves: (await shelf.db.read.select().from(pieceMoves).where(eq(pieceMoves.act, 'received'))).length,
  pieces: (await shelf.db.read.select().from(stock)).reduce((sum, { quantity }) => sum + quantity, 0),
});

describe('a delivery', () => {
  it('puts every line on the heap of its kind, in pieces, with its move, its lot and its ledger entry', async () => {
    await shelf.db.tx((write) =>
      write.update(items).set({ packMultiple: 5 }).where(eq(items.id, 'item_cr-c35-12')),
    );
    const [loose] = await shelf.db.read.select().from(stock).where(eq(stock.itemId, 'item_cr-c35-12'));
    const packs = line('b', {
      ...{ itemId: 'item_cr-c35-12', form: 'unsterile', lot: loose?.lot, useBy: null },
      ...{ count: 3, unit: 'packs', placeId: loose?.placeId },
    });
    expect(done(await receive(sent([line('a'), packs])))).toEqual({ id: 'delivery_a', lines: 2, pieces: 19 });
    const rows = await shelf.db.read.select().from(deliveryLines).orderBy(deliveryLines.lineNo);
    expect(rows).toMatchObject([
      { lineNo: 1, count: 4, piecesEach: 1, lot: 'L27-7001', orderLineId: null },
      { lineNo: 2, count: 3, piecesEach: 5, stockId: loose?.id },
    ]);
    expect((await shelf.heap(rows[0]?.stockId ?? '')).row).toMatchObject({
      quantity: 4,
      useBy: '2028-03-31',
    });
    expect(await shelf.quantity(loose?.id ?? '')).toBe((loose?.quantity ?? 0) + 15);
    const moves = await shelf.db.read.select().from(pieceMoves).where(eq(pieceMoves.act, 'received'));
    expect(moves.map(({ source, quantity, lot }) => ({ source, quantity, lot }))).toEqual([
      { source: 'deliveryLine_a', quantity: 4, lot: 'L27-7001' },
      { source: 'deliveryLine_b', quantity: 15, lot: loose?.lot },
    ]);
    const [entry] = await shelf.db.read.select().from(ledger).where(eq(ledger.action, 'receive-delivery'));
    expect(entry?.detail).toMatchObject({ reference: 'DN-20771', lines: [{ lot: 'L27-7001' }, {}] });
    expect(await unbalanced(shelf.db)).toEqual([]);
  });

  it('is received once, however often it is sent, and by two at once; other things under its id are refused', async () => {
    const same = sent([line('a')]);
    const [one, two] = await Promise.all([receive(same), receive(same)]);
    expect(two).toEqual(one);
    expect(done(await receive(same))).toEqual({ id: 'delivery_a', lines: 1, pieces: 4 });
    const after = await all();
    expect(after).toMatchObject({ deliveries: 1, lines: 1, moves: 1 });
    expect(codesOf(await receive(sent([line('z')])))).toEqual(['conflict']);
    expect(codesOf(await receive(same, shelf.other))).toEqual(['conflict']);
    // the same note, typed again by somebody else
    const again = sent([line('q')], { id: 'delivery_q', reference: 'dn-20771' });
    expect(codesOf(await receive(again, shelf.other))).toEqual(['received-before']);
    expect(await all()).toEqual(after);
  });

  it('is all or nothing: one line that is wrong keeps every line out, and all that is wrong is said at once', async () => {
    await shelf.db.tx(async (write) => {
      await write.update(items).set({ status: 'recalled' }).where(eq(items.id, 'item_sf-l50-70'));
      await write.update(items).set({ status: 'withdrawn' }).where(eq(items.id, 'item_sf-q50-n-09'));
    });
    const before = await all();
    const outcome = await receive(
      sent([
        line('ok'),
        line('recalled', { itemId: 'item_sf-l50-70' }),
        line('withdrawn', { itemId: 'item_sf-q50-n-09' }),
        line('past', { useBy: '2026-01-13' }),
        // held for a recall in the demo: a lot is under it wherever it lies
        line('lot', { itemId: 'item_sf-c35-16', lot: 'C35-4009' }),
        line('nowhere', { placeId: 'place_nowhere' }),
        line('what', { itemId: 'item_nothing' }),
        // on record with another use-by
        line('typo', { lot: 'L27-5540', useBy: '2029-01-01' }),
      ]),
    );
    if (outcome.ok) throw new Error('it must be refused');
    expect(outcome.refusal.problems.map(({ path, code }) => [path.join('.'), code])).toEqual([
      ['lines.1.itemId', 'recalled'],
      ['lines.2.itemId', 'withdrawn'],
      ['lines.3.useBy', 'past-use-by'],
      ['lines.4.lot', 'lot-recalled'],
      ['lines.4.useBy', 'other-use-by'],
      ['lines.5.placeId', 'no-such-place'],
      ['lines.6.itemId', 'no-such-item'],
      ['lines.7.useBy', 'other-use-by'],
    ]);
    expect(await all()).toEqual(before);
  });

  it('takes what is past its use-by as held, on a heap of its own; good through the day printed', async () => {
    const lines = [
      line('today', { lot: 'T', useBy: '2026-01-14' }),
      line('past', { lot: 'P', useBy: '2026-01-13', held: 'pastUseBy' }),
    ];
    done(await receive(sent(lines)));
    const [today, past] = await shelf.db.read.select().from(deliveryLines).orderBy(deliveryLines.lineNo);
    expect((await shelf.heap(today?.stockId ?? '')).row.heldBecause).toBeNull();
    expect((await shelf.heap(past?.stockId ?? '')).row.heldBecause).toBe('pastUseBy');
    expect(past?.heldBecause).toBe('pastUseBy');
    expect(await unbalanced(shelf.db)).toEqual([]);
  });

  it('takes nothing that an open recall names, by lot or as a whole, and heeds no rehearsal', async () => {
    const recall = (id: string, change: object) => ({
      ...{ id: `recall_${id}`, number: `R-${id}`, kind: 'lot', itemId: 'item_sf-l27-24', lot: 'L27-7001' },
      ...{ reason: 'A notice of its maker.', isRehearsal: false, found: {}, openedBy: shelf.lead.id },
      ...{ openedAt: shelf.now(), revision: 1, ...change },
    });
    const open = (one: object) =>
      shelf.db.tx((write) => write.insert(recalls).values(one as typeof recalls.$inferInsert));
    await open(recall('1', { isRehearsal: true }));
    done(await receive(sent([line('a')])));
    await open(recall('2', {}));
    const again = (lot: string | null) =>
      receive(sent([line('b', { lot })], { id: 'delivery_b', reference: 'B' }));
    expect(codesOf(await again('L27-7001'))).toEqual(['lot-recalled']);
    await open(recall('3', { kind: 'item', lot: null }));
    expect(codesOf(await again('L27-8888'))).toEqual(['lot-recalled']);
    expect(codesOf(await again(null))).toEqual(['lot-recalled']);
  });

  it('takes another use-by of a lot once the pack was read again', async () => {
    const typed = line('a', { lot: 'L27-5540', useBy: '2029-01-01', useByReadAgain: true });
    expect(done(await receive(sent([typed]))).pieces).toBe(4);
  });

  it('asks for what is lacking, and is refused to who may not receive', async () => {
    expect(codesOf(await receive(sent([line('a')]), shelf.surgeon))).toEqual(['not-permitted']);
    const outcome = await receive(
      sent([line('a', { lot: '', count: 0 }), line('b', { useBy: '31.3.2028' })], { reference: '  ' }),
    );
    if (outcome.ok) throw new Error('it must be refused');
    expect(outcome.refusal.problems.map(({ path }) => path.join('.')).sort()).toEqual([
      'lines.0.count',
      'lines.0.lot',
      'lines.1.useBy',
      'reference',
    ]);
    expect(codesOf(await receive(sent([line('a')], { arrivedOn: '2026-01-15' })))).toEqual(['in-the-future']);
  });

  it('never changes afterwards, except that a line is named for the order it answers, once', async () => {
    done(await receive(sent([line('a')])));
    const saying = (what: RegExp) => ({ cause: { message: expect.stringMatching(what) } });
    const run = (sql: string) => shelf.db.tx(async (write) => void write.run(raw.raw(sql)));
    await expect(
      run("UPDATE delivery_lines SET count = 9 WHERE id = 'deliveryLine_a'"),
    ).rejects.toMatchObject(saying(/kept/));
    await expect(run("UPDATE deliveries SET reference = 'x'")).rejects.toMatchObject(saying(/kept/));
    await expect(run('DELETE FROM deliveries')).rejects.toMatchObject(saying(/never deleted/));
    await run("UPDATE delivery_lines SET order_line_id = 'orderLine_1' WHERE id = 'deliveryLine_a'");
    await expect(run("UPDATE delivery_lines SET order_line_id = 'orderLine_2'")).rejects.toMatchObject(
      saying(/kept/),
    );
  });
});
