import { eq } from 'drizzle-orm';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { adjustStock } from '@/db/operations/stock/adjust-stock';
import { beginStockCount } from '@/db/operations/stock/begin-count';
import { beginStockRecount } from '@/db/operations/stock/begin-recount';
import { closeStockCount } from '@/db/operations/stock/close-count';
import { decideDifference } from '@/db/operations/stock/decide-difference';
import { holdStock } from '@/db/operations/stock/hold-stock';
import { letStockGo } from '@/db/operations/stock/let-stock-go';
import { moveStock } from '@/db/operations/stock/move-stock';
import { receiveDelivery } from '@/db/operations/stock/receive-delivery';
import { recordFigure } from '@/db/operations/stock/record-figure';
import { countOnRecord } from '@/db/queries/shelf/countOnRecord';
import { stock } from '@/db/schema';
import { placeId, stockCountId, stockCountLineId } from '@/lib/identity/ids';
import { adjustReason } from '@/lib/stock/adjustment';
import { unbalanced } from '../pieces/balance';
import { Shelf } from './shelf';

const ITEM = 'item_sf-l27-24';
const PLACES = ['place_consignment', 'place_general-stores', 'place_implant-cupboard'] as const;

type Act =
  | { kind: 'receive'; lot: string; pieces: number; place: number }
  | { kind: 'move'; heap: number; pieces: number; place: number }
  | { kind: 'adjust'; heap: number; pieces: number; reason: number }
  | { kind: 'hold'; heap: number; pieces: number }
  | { kind: 'letGo'; heap: number }
  | { kind: 'count'; place: number; off: number; accept: boolean; meanwhile: number };

const small = fc.nat(5);
const anyAct: fc.Arbitrary<Act> = fc.oneof(
  fc.record({
    kind: fc.constant('receive'),
    lot: fc.constantFrom('A', 'B'),
    pieces: fc.integer({ min: 1, max: 6 }),
    place: small,
  }),
  fc.record({ kind: fc.constant('move'), heap: small, pieces: small, place: small }),
  fc.record({ kind: fc.constant('adjust'), heap: small, pieces: small, reason: fc.nat(7) }),
  fc.record({ kind: fc.constant('hold'), heap: small, pieces: small }),
  fc.record({ kind: fc.constant('letGo'), heap: small }),
  fc.record({
    kind: fc.constant('count'),
    place: small,
    off: fc.integer({ min: -3, max: 3 }),
    accept: fc.boolean(),
    meanwhile: small,
  }),
) as fc.Arbitrary<Act>;

const placeAt = (at: number) => placeId.parse(PLACES[at % PLACES.length]);

/** Does one act on the heaps as they are, whether or not it is allowed. */
async function doAct(shelf: Shelf, act: Act): Promise<void> {
  const heaps = await shelf.db.read.select().from(stock).where(eq(stock.itemId, ITEM)).orderBy(stock.id);
  const heapAt = (at: number) => heaps[at % Math.max(1, heaps.length)]?.id;
  switch (act.kind) {
    case 'receive': {
      const id = shelf.newId('delivery');
      const line = {
        ...{ id: shelf.newId('deliveryLine'), itemId: ITEM, form: 'sterilePacked', lot: act.lot },
        ...{ useBy: '2028-01-31', count: act.pieces, unit: 'pieces', placeId: placeAt(act.place) },
        ...{ owner: 'ours', held: null, useByReadAgain: true, scanId: null },
      };
      const delivery = { id, supplier: 'S', reference: id, arrivedOn: '2026-01-14', lines: [line] };
      await receiveDelivery({
        db: shelf.db,
        now: shelf.now(),
        newId: shelf.newId,
        person: shelf.keeper,
        delivery,
      });
      return;
    }
    case 'count':
      return count(shelf, act);
    default: {
      const id = heapAt(act.heap);
      if (id === undefined) return;
      const asked = await shelf.at(id, shelf.lead);
      if (act.kind === 'move') await moveStock({ ...asked, pieces: act.pieces, placeId: placeAt(act.place) });
      if (act.kind === 'adjust') {
        const reason = adjustReason.options[act.reason % adjustReason.options.length] ?? 'found';
        await adjustStock({ ...asked, reason, pieces: act.pieces, note: 'As it was found.' });
      }
      if (act.kind === 'hold')
        await holdStock({ ...asked, because: 'disputedCount', pieces: act.pieces, note: '' });
      if (act.kind === 'letGo') {
        const attestation = shelf.proof(shelf.lead, 'iLiftThisHold', asked.now);
        await letStockGo({ ...asked, reason: 'Looked at.', attestation });
      }
    }
  }
}

/** A whole count whose figures are off by so many, with pieces taken elsewhere between counting and deciding. */
async function count(shelf: Shelf, act: Extract<Act, { kind: 'count' }>): Promise<void> {
  const { db, newId, keeper, other, manager } = shelf;
  const countId = stockCountId.parse(newId('stockCount'));
  const begun = await beginStockCount({
    ...{ db, newId, person: keeper, countId },
    now: shelf.now(),
    placeId: placeAt(act.place),
    countClass: 'all',
  });
  if (!begun.ok) return;
  const record = async () => {
    const found = await countOnRecord(db.read, countId);
    if (!found) throw new Error('the count was begun');
    return found;
  };
  for (const [round, person] of [keeper, other].entries()) {
    const found = await record();
    if (round === 1) {
      if (found.stage !== 'toRecount') break;
      await beginStockRecount({ db, now: shelf.now(), person, countId, baseRevision: found.count.revision });
    }
    for (const { row } of found.lines) {
      if (row.itemId !== ITEM || row.stockId === null || (round === 1 && !row.recount)) continue;
      const now = shelf.now();
      const pieces = Math.max(0, (await shelf.heap(row.stockId)).free + act.off);
      const figure = { kind: 'line', id: newId('entry'), lineId: row.id, pieces, doneAt: now };
      await recordFigure({ db, now, person, sessionId: null, countId, figure });
    }
    await closeStockCount({
      db,
      now: shelf.now(),
      person,
      countId,
      baseRevision: (await record()).count.revision,
    });
  }
  await doAct(shelf, { kind: 'move', heap: act.meanwhile, pieces: act.meanwhile, place: act.meanwhile });
  const decision = act.accept ? 'accepted' : 'left';
  for (const { row } of (await record()).lines)
    await decideDifference({
      ...{ db, newId, person: manager, countId, lineId: stockCountLineId.parse(row.id), decision },
      ...{ now: shelf.now(), because: 'Looked at again.' },
    });
}

it('whatever is received, moved, corrected, held and counted, in any order: each heap is what the journal comes to', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(anyAct, { minLength: 4, maxLength: 14 }), async (acts) => {
      const shelf = await Shelf.open();
      for (const act of acts) await doAct(shelf, act);
      expect(await unbalanced(shelf.db)).toEqual([]);
      const rows = await shelf.db.read.select().from(stock).where(eq(stock.itemId, ITEM));
      for (const { quantity } of rows) expect(quantity).toBeGreaterThanOrEqual(0);
    }),
    { numRuns: 25 },
  );
});
