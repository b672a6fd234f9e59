import { eq, sql } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import { abandonStockCount } from '@/db/operations/stock/abandon-count';
import { adjustStock } from '@/db/operations/stock/adjust-stock';
import { beginStockCount } from '@/db/operations/stock/begin-count';
import { beginStockRecount } from '@/db/operations/stock/begin-recount';
import { closeStockCount } from '@/db/operations/stock/close-count';
import { decideDifference } from '@/db/operations/stock/decide-difference';
import { moveStock } from '@/db/operations/stock/move-stock';
import { recordFigure } from '@/db/operations/stock/record-figure';
import type { Person } from '@/db/queries/people';
import { countOnRecord } from '@/db/queries/shelf/countOnRecord';
import { heapsToCount } from '@/db/queries/shelf/dueCounts';
import { casePicks, items, pieceMoves, settings, stock, stockCountFigures, usageMonths } from '@/db/schema';
import { entryId, placeId, stockCountId, stockCountLineId } from '@/lib/identity/ids';
import { DEMO_NOW } from '../../setup/database';
import { unbalanced } from '../pieces/balance';
import { codesOf, done, Shelf } from './shelf';

let shelf: Shelf;
const PLACE = placeId.parse('place_consignment');
const COUNT = stockCountId.parse('stockCount_1');
const LATER = '2026-02-20T08:00:00.000Z';

/** Three heaps alone in a place of their own, so that counting them is counting all. */
async function threeHeaps() {
  await shelf.db.tx((write) =>
    write.update(stock).set({ placeId: 'place_general-stores' }).where(eq(stock.placeId, PLACE)),
  );
  const at = (lot: string, quantity: number) =>
    shelf.putDown(quantity, { lot, placeId: PLACE, owner: 'consignment' });
  return { a: await at('A', 10), b: await at('B', 4), c: await at('C', 7) };
}

const base = () => ({ db: shelf.db, now: shelf.now(), newId: shelf.newId, countId: COUNT });
const begin = (person = shelf.keeper, change: object = {}) =>
  beginStockCount({ ...base(), person, placeId: PLACE, countClass: 'all', ...change });
async function record() {
  const found = await countOnRecord(shelf.db.read, COUNT);
  if (!found) throw new Error('there is no count');
  return found;
}
async function lineOf(lot: string) {
  const line = (await record()).lines.find(({ row }) => row.lot === lot);
  if (!line) throw new Error(`no line of lot ${lot}`);
  return { ...line, id: stockCountLineId.parse(line.row.id) };
}
async function figure(lot: string, pieces: number, person: Person = shelf.keeper, change: object = {}) {
  const at = shelf.now();
  const sent = {
    kind: 'line',
    id: entryId.parse(shelf.newId('entry')),
    lineId: (await lineOf(lot)).id,
    pieces,
    doneAt: at,
    ...change,
  };
  return recordFigure({ db: shelf.db, now: at, person, sessionId: null, countId: COUNT, figure: sent });
}
const act = async (person: Person) => ({ ...base(), person, baseRevision: (await record()).count.revision });
const close = async (person: Person = shelf.keeper) => closeStockCount(await act(person));
const decide = async (lot: string, decision: 'accepted' | 'left', person = shelf.manager, because = '') =>
  decideDifference({ ...base(), person, lineId: (await lineOf(lot)).id, decision, because });

beforeEach(async () => {
  shelf = await Shelf.open();
});

describe('a blind count', () => {
  it('finds what agrees, has another person count again what does not, and changes the record only when decided', async () => {
    const { a, b, c } = await threeHeaps();
    done(await begin());
    expect((await record()).lines.map(({ row }) => row.lot).sort()).toEqual(['A', 'B', 'C']);
    for (const [lot, pieces] of [
      ['A', 9],
      ['B', 4],
      ['C', 8],
    ] as const)
      done(await figure(lot, pieces));
    expect(done(await close())).toEqual({ recount: 2, differences: 2 });
    expect(await shelf.quantity(a.id)).toBe(10);
    expect((await record()).stage).toBe('toRecount');
    // nobody decides before, and the first counter does not count again
    expect(codesOf(await decide('A', 'accepted'))).toEqual(['frozen']);
    expect(codesOf(await beginStockRecount(await act(shelf.keeper)))).toEqual(['not-permitted']);
    done(await beginStockRecount(await act(shelf.other)));
    expect(codesOf(await figure('B', 4, shelf.other))).toEqual(['frozen']);
    expect(codesOf(await figure('A', 9, shelf.keeper))).toEqual(['not-permitted']);
    done(await figure('A', 9, shelf.other));
    expect(codesOf(await close(shelf.other))).toEqual(['frozen']);
    done(await figure('C', 7, shelf.other));
    done(await close(shelf.other));
    const after = await record();
    expect(after.stage).toBe('toDecide');
    expect(after.lines.map(({ row, difference }) => [row.lot, difference]).sort()).toEqual([
      ['A', -1],
      ['B', 0],
      ['C', 0],
    ]);
    // neither counter decides
    expect(codesOf(await decide('A', 'accepted', shelf.keeper))).toEqual(['not-permitted']);
    expect(codesOf(await decide('A', 'accepted', shelf.other))).toEqual(['not-permitted']);
    expect(codesOf(await decide('A', 'left'))).toEqual(['needed']);
    done(await decide('A', 'accepted'));
    expect(done(await decide('A', 'accepted'))).toEqual({ difference: -1 });
    expect((await record()).stage).toBe('done');
    expect([await shelf.quantity(a.id), await shelf.quantity(b.id), await shelf.quantity(c.id)]).toEqual([
      9, 4, 7,
    ]);
    const [move] = await shelf.db.read.select().from(pieceMoves).where(eq(pieceMoves.act, 'notFound'));
    expect(move).toMatchObject({ fromStockId: a.id, quantity: 1, reason: 'shelf', owner: 'consignment' });
    expect(await unbalanced(shelf.db)).toEqual([]);
  });

  it('loses no piece that is picked, issued or moved while it goes on', async () => {
    const { a } = await threeHeaps();
    done(await begin());
    // three lie with a kit: seven are on the shelf
    const pick = {
      ...{ id: 'pick_test-1', caseId: 'case_lm-26-9rtb', stockId: a.id, itemId: a.itemId, quantity: 3 },
      ...{ how: 'touch', pickedBy: shelf.lead.id, doneAt: shelf.now(), enteredAt: shelf.now() },
    };
    await shelf.db.tx((write) => write.insert(casePicks).values(pick));
    done(await figure('A', 6));
    done(await close());
    done(await beginStockRecount(await act(shelf.other)));
    done(await figure('A', 6, shelf.other));
    done(await close(shelf.other));
    // meanwhile two more are moved elsewhere
    done(
      await moveStock({
        ...(await shelf.at(a.id)),
        pieces: 2,
        placeId: placeId.parse('place_general-stores'),
      }),
    );
    done(await decide('A', 'accepted'));
    // ten, less two moved, less the one not found: the three with the kit are untouched
    expect(await shelf.heap(a.id)).toMatchObject({ row: { quantity: 7 }, free: 4 });
    expect(await unbalanced(shelf.db)).toEqual([]);
  });

  it('does not take a figure of a heap that was touched after it was counted', async () => {
    const { a } = await threeHeaps();
    done(await begin());
    const countedAt = shelf.now();
    done(
      await moveStock({
        ...(await shelf.at(a.id, shelf.lead)),
        pieces: 2,
        placeId: placeId.parse('place_general-stores'),
      }),
    );
    expect(codesOf(await figure('A', 10, shelf.keeper, { doneAt: countedAt }))).toEqual(['frozen']);
    done(await figure('A', 8));
    expect((await lineOf('A')).difference).toBe(0);
  });

  it('does not correct twice: a heap corrected after it was counted is counted again', async () => {
    const { a } = await threeHeaps();
    done(await begin());
    done(await figure('A', 8));
    done(await close());
    done(await beginStockRecount(await act(shelf.other)));
    done(await figure('A', 8, shelf.other));
    done(await close(shelf.other));
    for (const reason of ['notFound', 'damaged'] as const) {
      const asked = await shelf.at(a.id, shelf.lead);
      done(await adjustStock({ ...asked, reason, pieces: 1, note: '' }));
      expect(codesOf(await decide('A', 'accepted'))).toEqual(['conflict']);
    }
    expect(await shelf.quantity(a.id)).toBe(8);
    done(await decide('A', 'left', shelf.manager, 'Corrected meanwhile.'));
    expect(await shelf.quantity(a.id)).toBe(8);
  });

  it('takes what lies there and is on no record, on a heap of its own once it is accepted', async () => {
    await threeHeaps();
    await shelf.db.tx((write) =>
      write.insert(settings).values({ key: 'stock', value: { tolerancePieces: 5 }, revision: 1 }),
    );
    done(await begin());
    const lineId = stockCountLineId.parse('stockCountLine_added');
    const added = {
      ...{ kind: 'added', lineId, itemId: 'item_sf-l50-70', form: 'sterilePacked', lot: 'NEW' },
      ...{ useBy: '2027-01-31', owner: 'ours', pieces: 2 },
    };
    done(await figure('A', 10, shelf.keeper, added));
    // listed already, although it was entered as something else that lies there
    const same = {
      ...added,
      lineId: 'stockCountLine_other',
      itemId: 'item_sf-l27-24',
      lot: 'B',
      useBy: '2027-06-30',
    };
    done(await figure('B', 4, shelf.keeper, { ...same, owner: 'consignment', pieces: 4 }));
    // within the tolerance: nobody counts again
    expect(done(await close())).toEqual({ recount: 0, differences: 1 });
    done(await decide('NEW', 'accepted'));
    const [heap] = await shelf.db.read.select().from(stock).where(eq(stock.lot, 'NEW'));
    expect(heap).toMatchObject({ quantity: 2, placeId: PLACE, owner: 'ours', useBy: '2027-01-31' });
    expect(await unbalanced(shelf.db)).toEqual([]);
  });

  it('is stored once, figure by figure; the last one of a person stands, and two at once are two', async () => {
    await threeHeaps();
    done(await begin());
    expect(done(await begin())).toEqual({ id: COUNT });
    const id = entryId.parse('entry_same');
    const doneAt = shelf.now();
    const once = done(await figure('A', 3, shelf.keeper, { id, doneAt }));
    expect(done(await figure('A', 3, shelf.keeper, { id, doneAt }))).toEqual(once);
    expect(codesOf(await figure('A', 4, shelf.keeper, { id, doneAt }))).toEqual(['conflict']);
    await Promise.all([figure('A', 5), figure('B', 1)]);
    expect((await lineOf('A')).standing?.pieces).toBe(5);
    expect(await shelf.db.read.select().from(stockCountFigures)).toHaveLength(3);
    expect(codesOf(await figure('A', 5, shelf.lead))).toEqual(['not-permitted']);
    expect(codesOf(await figure('A', 1.5))).not.toEqual([]);
    await expect(shelf.db.tx((write) => write.update(stockCountFigures).set({ pieces: 9 }))).rejects.toThrow(
      /append-only/,
    );
  });

  it('lists what nobody counts now, and is given up by whoever began it', async () => {
    await threeHeaps();
    done(await begin());
    const second = stockCountId.parse('stockCount_2');
    expect(codesOf(await begin(shelf.other, { countId: second }))).toEqual(['frozen']);
    expect(codesOf(await abandonStockCount(await act(shelf.other)))).not.toEqual(['not-permitted']);
    done(await begin(shelf.other, { countId: second }));
    expect(codesOf(await figure('A', 10))).toEqual(['frozen']);
    expect(codesOf(await close())).toEqual(['frozen']);
  });

  it('keeps its counter from correcting the same heap meanwhile', async () => {
    const { a } = await threeHeaps();
    done(await begin());
    const asked = { ...(await shelf.at(a.id)), reason: 'found' as const, pieces: 1, note: '' };
    expect(codesOf(await adjustStock(asked))).toEqual(['frozen']);
  });
});

describe('what is due to be counted', () => {
  it('follows the class of the item: by value of use, or by must-have class', async () => {
    await threeHeaps();
    await shelf.db.tx(async (write) => {
      await write.delete(usageMonths);
      await write.insert(usageMonths).values([
        { itemId: 'item_sf-l27-24', month: '2025-12', implanted: 900, wasted: 0, notFound: 0, refilled: 0 },
        // thirteen months ago: no longer counts
        {
          itemId: 'item_sf-l50-70',
          month: '2024-12',
          implanted: 900_000,
          wasted: 0,
          notFound: 0,
          refilled: 0,
        },
      ]);
      await write.update(items).set({ unitCostPence: 5_000 }).where(sql`true`);
    });
    const classOf = async (itemId: string, now = DEMO_NOW.toISOString()) =>
      (await heapsToCount(shelf.db.read, now)).find((heap) => heap.itemId === itemId);
    expect((await classOf('item_sf-l27-24'))?.countClass).toBe('A');
    expect((await classOf('item_sf-l50-70'))?.countClass).toBe('C');
    await shelf.db.tx((write) =>
      write.insert(settings).values({ key: 'stock', value: { countClassBy: 'mustHaveClass' }, revision: 1 }),
    );
    // a sleeve that stops the step where it is not there, and a seal that no configuration lists
    expect((await classOf('item_pt-c-seal'))?.countClass).toBe('C');
    const classes = new Set((await heapsToCount(shelf.db.read, LATER)).map(({ countClass }) => countClass));
    expect([...classes].sort()).toEqual(['A', 'B', 'C']);
  });

  it('is all that was never counted, and what was, again after the days of its class', async () => {
    await threeHeaps();
    done(await begin());
    done(await figure('A', 10));
    const due = async (now: string) => {
      const heaps = await heapsToCount(shelf.db.read, now);
      return heaps.filter(({ placeId: at }) => at === PLACE).filter(({ due: is }) => is).length;
    };
    expect(await due(DEMO_NOW.toISOString())).toBe(3);
    done(await close());
    // by default class C is counted every 180 days: lot A is not due the next day, and is after them
    expect(await due('2026-01-15T08:00:00.000Z')).toBe(2);
    expect(await due('2026-07-12T08:00:00.000Z')).toBe(2);
    expect(await due('2026-07-13T08:00:00.000Z')).toBe(3);
  });
});
