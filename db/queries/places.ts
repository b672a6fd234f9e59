import { and, asc, count, eq, inArray } from 'drizzle-orm';
import { type PlaceId, placeId, type SetId, setId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import { type TurnStep, turnStep } from '@/lib/sets/setState';
import { mayRead, type Reading } from '../reader';
import { configurations, configurationVersions, items, packs, places, sets, stock } from '../schema';
import { heapsHiddenFrom } from './shelf/blindHeaps';
import { onShelf } from './shelf/onShelf';

export interface PlaceOnFile {
  id: PlaceId;
  name: string;
  metres: number;
  withdrawnAt: string | null;
  revision: number;
  sets: number;
  /** Lines of shelf stock, not pieces. */
  stockLines: number;
}

/** Every place with how much lies there, those in use first. */
export async function listPlaces(db: Reading): Promise<PlaceOnFile[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [rows, setsAt, stockAt] = await Promise.all([
    read.select().from(places).orderBy(asc(places.name)),
    read.select({ id: sets.placeId, n: count() }).from(sets).groupBy(sets.placeId),
    read.select({ id: stock.placeId, n: count() }).from(stock).where(onShelf).groupBy(stock.placeId),
  ]);
  const numbers = (found: { id: string | null; n: number }[]) => new Map(found.map(({ id, n }) => [id, n]));
  const [setsIn, stockIn] = [numbers(setsAt), numbers(stockAt)];
  return rows
    .map((row) => ({
      ...row,
      id: placeId.parse(row.id),
      sets: setsIn.get(row.id) ?? 0,
      stockLines: stockIn.get(row.id) ?? 0,
    }))
    .sort((a, b) => Number(a.withdrawnAt !== null) - Number(b.withdrawnAt !== null));
}

interface LyingThere {
  /** How many in all. */
  setsThere: number;
  stockThere: number;
  sets: {
    id: SetId;
    code: string;
    configuration: string;
    step: TurnStep;
    heldBecause: string | null;
    since: string;
  }[];
  stock: {
    id: string;
    itemId: string;
    item: string;
    form: string;
    lot: string | null;
    useBy: string | null;
    /** `null` where the reader counts it now, without seeing the record. */
    quantity: number | null;
    heldBecause: string | null;
    /** Numbers of the pouches in it that carry a label of ours. */
    pouches: string[];
  }[];
}

/** What lies in a place: sets by code, then shelf stock by item and use-by, the first `most` of each. */
export async function whatLiesIn(db: Reading, id: PlaceId, most: number): Promise<LyingThere> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const ofHeaps = and(eq(stock.placeId, id), onShelf);
  const [lying, heaps, hidden, [setsThere], [stockThere]] = await Promise.all([
    read
      .select({
        id: sets.id,
        code: sets.code,
        step: sets.step,
        heldBecause: sets.heldBecause,
        since: sets.stepSince,
        configuration: configurations.name,
      })
      .from(sets)
      .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
      .innerJoin(configurations, eq(configurations.id, configurationVersions.configurationId))
      .where(eq(sets.placeId, id))
      .orderBy(asc(sets.code))
      .limit(most),
    read
      .select({ heap: stock, item: items.name })
      .from(stock)
      .innerJoin(items, eq(items.id, stock.itemId))
      .where(ofHeaps)
      .orderBy(asc(items.name), asc(stock.useBy))
      .limit(most),
    heapsHiddenFrom(db),
    read.select({ n: count() }).from(sets).where(eq(sets.placeId, id)),
    read.select({ n: count() }).from(stock).where(ofHeaps),
  ]);
  const pouches = await read
    .select({ stockId: packs.stockId, number: packs.number })
    .from(packs)
    .where(
      and(
        inArray(
          packs.stockId,
          heaps.map(({ heap }) => heap.id),
        ),
        eq(packs.state, 'sterile'),
      ),
    )
    .orderBy(asc(packs.number));
  const pouchesOf = groupBy(pouches, ({ stockId }) => stockId);
  return {
    setsThere: setsThere?.n ?? 0,
    stockThere: stockThere?.n ?? 0,
    sets: lying.map(({ id: one, step, ...rest }) => ({
      ...rest,
      id: setId.parse(one),
      step: turnStep.parse(step),
    })),
    stock: heaps.map(({ heap, item }) => ({
      id: heap.id,
      itemId: heap.itemId,
      item,
      form: heap.form,
      lot: heap.lot,
      useBy: heap.useBy,
      quantity: hidden.has(heap.id) ? null : heap.quantity,
      heldBecause: heap.heldBecause,
      pouches: hidden.has(heap.id) ? [] : (pouchesOf.get(heap.id) ?? []).map(({ number }) => number),
    })),
  };
}

/** The revision a set has now, for an act that rests on no other value of it. */
export async function revisionOfSet(db: Reading, id: SetId): Promise<number | null> {
  mayRead(db, 'readHospital');
  const [row] = await db.read.select({ revision: sets.revision }).from(sets).where(eq(sets.id, id));
  return row?.revision ?? null;
}
