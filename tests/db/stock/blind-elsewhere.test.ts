import { expect, it } from 'vitest';
import { readAs } from '@/db/client';
import { beginStockCount } from '@/db/operations/stock/begin-count';
import { slotsToRefill } from '@/db/queries/restock/refills';
import { loadShortScreen } from '@/db/queries/short/screen';
import type { Reading } from '@/db/reader';
import { places, sets } from '@/db/schema';
import { placeId, stockCountId } from '@/lib/identity/ids';
import { DEMO_NOW } from '../../setup/database';
import { Shelf } from './shelf';

const NOW = DEMO_NOW.toISOString();
/** The stock keeper counts every place there is, without seeing the record. */
async function countAll(shelf: Shelf): Promise<void> {
  const { db, keeper, newId } = shelf;
  for (const [at, { id }] of (await db.read.select({ id: places.id }).from(places)).entries()) {
    const countId = stockCountId.parse(`stockCount_${at}`);
    const count = { db, now: shelf.now(), newId, countId, person: keeper };
    // where nothing lies there is nothing to count, which it says
    await beginStockCount({ ...count, placeId: placeId.parse(id), countClass: 'all' });
  }
}

it('what sets lack is told with no figure of heaps the reader counts blind, and with it to others', async () => {
  const shelf = await Shelf.open();
  const { db, keeper, other } = shelf;
  const before = await slotsToRefill(db, NOW);
  const onShelf = before.filter((row) => (row.onShelf ?? 0) > 0);
  expect(onShelf.length).toBeGreaterThan(0);
  await countAll(shelf);
  const blind = await slotsToRefill(readAs(db, keeper), NOW);
  expect(blind.map(({ onShelf: pieces }) => pieces)).toEqual(before.map((row) => (row.first ? null : 0)));
  expect(await slotsToRefill(readAs(db, other), NOW)).toEqual(before);
});

it('spares for a short set are named without their number while the reader counts them blind', async () => {
  const shelf = await Shelf.open();
  const { db, keeper, other } = shelf;
  const ids = (await db.read.select({ id: sets.id }).from(sets)).map(({ id }) => id);
  const sparesOf = async (reading: Reading) =>
    (
      await Promise.all(ids.map(async (id) => (await loadShortScreen(reading, id, NOW))?.spares ?? []))
    ).flat();
  const before = await sparesOf(db);
  expect(before.length).toBeGreaterThan(0);
  await countAll(shelf);
  expect(await sparesOf(readAs(db, keeper))).toEqual(before.map((spare) => ({ ...spare, quantity: null })));
  expect(await sparesOf(readAs(db, other))).toEqual(before);
});
