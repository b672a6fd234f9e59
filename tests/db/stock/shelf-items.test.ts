import { eq, sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import { type Database, readAs } from '@/db/client';
import { beginStockCount } from '@/db/operations/stock/begin-count';
import { shelfItems, shelfLots } from '@/db/queries/shelf/shelfLots';
import { casePicks, items, lenders, packs, places, stock } from '@/db/schema';
import { type PlaceId, stockCountId } from '@/lib/identity/ids';
import { DEMO_NOW, demoDatabase } from '../../setup/database';
import { done, Shelf } from './shelf';

const NOW = DEMO_NOW.toISOString();

/** The same heaps, item by item, nothing of which is kept. */
async function readAnew(db: Database, now = NOW) {
  const known = await db.read
    .selectDistinct({ id: items.id, code: items.code })
    .from(items)
    .innerJoin(stock, eq(stock.itemId, items.id))
    .orderBy(items.code);
  const all = await Promise.all(known.map(({ id }) => shelfLots(db, now, { itemId: id })));
  return all.filter((own) => own.length > 0);
}

/** Numbers that look drawn, the same every time. */
const drawn = (seed: number) => (most: number) => {
  // the generator of Numerical Recipes, https://numerical.recipes: as good as it has to be here
  seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
  return seed % most;
};

/** A pouch of the heap gets a label; answers what is on it. */
async function labelled(db: Database, { id, itemId }: { id: string; itemId: string }): Promise<string> {
  const number = 'P9999999-1';
  await db.tx((write) =>
    write.insert(packs).values({
      ...{ id: 'pack_test-label', number, kind: 'pouch', itemId, barrier: 'pouch', contents: [] },
      ...{ packedBy: 'person_wren-adeyemi', packedAt: NOW, stockId: id, state: 'sterile', revision: 1 },
    }),
  );
  return number;
}

it('the shelves hold every heap with pieces, by item code and in the order of taking', async () => {
  const db = await demoDatabase();
  const shelf = await shelfItems(db, NOW);
  expect(shelf).toEqual(await readAnew(db));
  const codes = shelf.map(([first]) => first?.code ?? '');
  expect(codes).toEqual([...codes].sort());
  const rows = shelf.flat();
  expect(rows.length).toBe(
    db.read.get<{ n: number }>(sql`SELECT count(*) AS n FROM stock WHERE quantity > 0`)?.n,
  );
  for (const own of shelf) {
    const turns = own.flatMap(({ turn }) => turn ?? []);
    expect(turns).toEqual(turns.map((_, at) => at + 1));
    const inTurn = own.filter(({ turn }) => turn !== null).map(({ useBy }) => useBy ?? '9999');
    expect(inTurn).toEqual([...inTurn].sort());
  }
});

it('what nothing was written about is the very same, and what was is read anew, whatever was written', async () => {
  const db = await demoDatabase();
  const next = drawn(20260114);
  const anyOf = <T>(all: readonly T[]): T => all[next(all.length)] as T;
  let before = await shelfItems(db, NOW);
  expect((await shelfItems(db, NOW)).every((own, at) => own === before[at])).toBe(true);
  const picks = await db.read.select().from(casePicks).limit(1);
  for (let round = 0; round < 40; round += 1) {
    const heap = anyOf(await db.read.select().from(stock));
    const of = eq(stock.id, heap.id);
    const change = next(7);
    await db.tx(async (write) => {
      if (change === 0)
        await write
          .update(stock)
          .set({ quantity: next(4) })
          .where(of);
      if (change === 1)
        await write
          .update(stock)
          .set({ heldBecause: heap.heldBecause === null ? 'recall' : null })
          .where(of);
      if (change === 2)
        await write
          .update(stock)
          .set({ placeId: anyOf(await write.select().from(places)).id })
          .where(of);
      if (change === 3)
        await write
          .update(items)
          .set({ name: `Renamed ${round}` })
          .where(eq(items.id, heap.itemId));
      if (change === 4)
        await write
          .update(stock)
          .set({ useBy: `2026-0${1 + next(9)}-15` })
          .where(of);
      if (change === 5)
        await write
          .update(places)
          .set({ metres: next(90) })
          .where(eq(places.id, heap.placeId));
      if (change === 6 && picks[0])
        await write.insert(casePicks).values({
          ...picks[0],
          id: `pick_walk-${round}`,
          stockId: heap.id,
          itemId: heap.itemId,
          setId: null,
          packId: null,
          quantity: 1,
          putBackAt: null,
          issuedAt: null,
        });
    });
    const after = await shelfItems(db, NOW);
    const said = `round ${round}, change ${change}`;
    const own = after.filter(([first]) => first?.itemId === heap.itemId);
    const anew = await shelfLots(db, NOW, { itemId: heap.itemId });
    expect(own, said).toEqual(anew.length === 0 ? [] : [anew]);
    if (round === 39) expect(after, said).toEqual(await readAnew(db));
    // only a place, which every heap there is judged by, renews all
    const kept = new Set(before);
    if (change !== 5 && change !== 2)
      expect(after.filter((own) => !kept.has(own)).length, `round ${round}`).toBeLessThanOrEqual(1);
    before = after;
  }
});

it('another day, a label, a lender and whoever counts a heap blind are each told anew', async () => {
  const db = await demoDatabase();
  const first = await shelfItems(db, NOW);
  const later = '2031-01-14T06:30:00.000Z';
  expect(await shelfItems(db, later)).toEqual(await readAnew(db, later));
  expect((await shelfItems(db, later)).flat().some(({ because }) => because === 'pastUseBy')).toBe(true);
  expect(await shelfItems(db, NOW)).toEqual(first);
  const [lender] = await db.read.select().from(lenders).limit(1);
  const heap = first.flat().find(({ pieces }) => (pieces?.all ?? 0) > 1);
  if (!heap || !lender) throw new Error('the demo has a heap and a lender');
  await db.tx(async (write) => {
    await write.update(lenders).set({ name: 'Another name' }).where(eq(lenders.id, lender.id));
    await write.update(stock).set({ owner: 'consignment', lenderId: lender.id }).where(eq(stock.id, heap.id));
  });
  const own = (await shelfItems(db, NOW)).flat().find(({ id }) => id === heap.id);
  expect(own).toMatchObject({ owner: 'consignment', lender: 'Another name' });
  expect(await shelfItems(db, NOW)).toEqual(await readAnew(db));
  const number = await labelled(db, heap);
  expect((await shelfItems(db, NOW)).flat().find(({ id }) => id === heap.id)?.labels).toEqual([number]);
  expect(await shelfItems(db, NOW)).toEqual(await readAnew(db));
});

it('whoever counts a place blind sees no figure of it, and others do', async () => {
  const shelf = await Shelf.open();
  const { db, keeper, other, newId } = shelf;
  const pouches = (await shelfItems(db, NOW)).flat().find(({ form }) => form === 'pouch');
  if (!pouches) throw new Error('the demo has pouches');
  const placeOf = pouches.placeId as PlaceId;
  const number = await labelled(db, pouches);
  const all = await shelfItems(db, NOW);
  expect(all.flat().find(({ id }) => id === pouches.id)?.labels).toEqual([number]);
  const count = { db, now: shelf.now(), newId, countId: stockCountId.parse('stockCount_1'), person: keeper };
  done(await beginStockCount({ ...count, placeId: placeOf, countClass: 'all' }));
  const blind = (await shelfItems(readAs(db, keeper), NOW))
    .flat()
    .filter(({ placeId }) => placeId === placeOf);
  expect(blind.some(({ pieces }) => pieces === null)).toBe(true);
  // as many labels as pouches would tell the figure
  expect(blind.find(({ id }) => id === pouches.id)).toMatchObject({ pieces: null, labels: [] });
  expect(await shelfItems(readAs(db, keeper), NOW)).toEqual(await readAnew(readAs(db, keeper)));
  expect(await shelfItems(readAs(db, other), NOW)).toEqual(all);
});
