import { and, asc, eq, inArray, type SQL, sql } from 'drizzle-orm';
import { groupBy } from '@/lib/lists/groupBy';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import { prepared } from '../../prepared';
import { mayRead, type Reading } from '../../reader';
import { items, lenders, makers, packs, places, stock } from '../../schema';
import { onKits } from '../caseLife/standing';
import { promisedPouches } from '../short/decisions';
import { heapsHiddenFrom } from './blindHeaps';
import { onShelf } from './onShelf';
import {
  type Beside,
  type HeapCells,
  type ItemCells,
  rowsOfItem,
  type ShelfGround,
  type ShelfLotRow,
} from './shelfRow';

/** The heaps of one item (those that are empty now, where asked), each with its turn, in the order of taking. */
export async function shelfLots(
  db: Reading,
  now: string,
  { itemId, empty = false }: { itemId: string; empty?: boolean },
): Promise<ShelfLotRow[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const of = and(eq(stock.itemId, itemId), empty ? eq(stock.quantity, 0) : onShelf);
  const [rows, ground, besideOf] = await Promise.all([
    textsOf(read, of).all(),
    groundOf(read, now),
    whatIsToldBeside(db, now),
  ]);
  return rows.flatMap(({ item, heaps }) => rowsOf(item, heaps, besideOf.get(itemId) ?? [], ground));
}

interface Kept {
  under: string;
  items: ReadonlyMap<string, { text: string; rows: readonly ShelfLotRow[] }>;
}
const kept = new WeakMap<Queries, Kept>();

/**
 * The heaps of every item of the shelves, by item code, and within an item in the order of taking. All that is told of an
 * item's heaps is read every time, as one text, and where the text is the same as before, the same rows come back: nobody
 * may change them, and what is worked out of them holds for as long as they are the same.
 */
export async function shelfItems(db: Reading, now: string): Promise<(readonly ShelfLotRow[])[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [rows, ground, besideOf] = await Promise.all([
    wholeShelf(read).all(),
    groundOf(read, now),
    whatIsToldBeside(db, now),
  ]);
  const under = JSON.stringify([ground.today, [...ground.places], [...ground.lenders]]);
  const before = kept.get(read);
  const known: Kept['items'] = before?.under === under ? before.items : new Map();
  const present = new Map(
    rows.map(({ itemId, item, heaps }) => {
      const beside = besideOf.get(itemId) ?? [];
      const text = `${item}${heaps}${beside.length === 0 ? '' : JSON.stringify(beside)}`;
      const same = known.get(itemId);
      return [itemId, same?.text === text ? same : { text, rows: rowsOf(item, heaps, beside, ground) }];
    }),
  );
  kept.set(read, { under, items: present });
  return [...present.values()].map((one) => one.rows).filter((own) => own.length > 0);
}

const rowsOf = (item: string, heaps: string, beside: Beside[], ground: ShelfGround) =>
  rowsOfItem(JSON.parse(item) as ItemCells, JSON.parse(heaps) as HeapCells[], beside, ground);

const wholeShelf = prepared((read) => textsOf(read, onShelf).prepare());

// one text for each item: a row for each of thousands of heaps would cost more than all the rest
function textsOf(read: Queries, of: SQL | undefined) {
  const { id, revision, form, lot, useBy, quantity, owner, lenderId, placeId, heldBecause } = stock;
  const heaps = sql<string>`json_group_array(json_array(${id}, ${revision}, ${form}, ${lot}, ${useBy}, ${quantity}, ${owner},
    ${lenderId}, ${placeId}, ${heldBecause}))`;
  const { code, name, status } = items;
  return read
    .select({
      itemId: stock.itemId,
      item: sql<string>`json_array(${items.id}, ${code}, ${name}, ${status}, ${makers.name})`,
      heaps,
    })
    .from(stock)
    .innerJoin(items, eq(items.id, stock.itemId))
    .innerJoin(makers, eq(makers.id, items.makerId))
    .where(of)
    .groupBy(stock.itemId)
    .orderBy(asc(items.code));
}

async function groundOf(read: Queries, now: string): Promise<ShelfGround> {
  const [rows, owners] = await Promise.all([
    read.select({ id: places.id, name: places.name, metres: places.metres }).from(places),
    read.select({ id: lenders.id, name: lenders.name }).from(lenders),
  ]);
  return {
    today: wallClock(now).date,
    places: new Map(rows.map(({ id, name, metres }) => [id, { name, metres }])),
    lenders: new Map(owners.map(({ id, name }) => [id, name])),
  };
}

/** By item: what lies with kits, travels with sets, carries a label, or is counted by the reader now. */
async function whatIsToldBeside(db: Reading, now: string): Promise<Map<string, Beside[]>> {
  const { read } = db;
  const [kits, travelling, labels, hidden] = await Promise.all([
    onKits(read),
    promisedPouches(read, now),
    read
      .select({ stockId: packs.stockId, number: packs.number })
      .from(packs)
      .innerJoin(stock, eq(stock.id, packs.stockId))
      .where(eq(packs.state, 'sterile')),
    heapsHiddenFrom(db),
  ]);
  const labelsOf = groupBy(labels, ({ stockId }) => stockId as string);
  const told = new Set<string>([...kits.keys(), ...travelling.keys(), ...labelsOf.keys(), ...hidden]);
  if (told.size === 0) return new Map();
  const heaps = await read
    .select({ stockId: stock.id, itemId: stock.itemId })
    .from(stock)
    .where(inArray(stock.id, sql`(SELECT value FROM json_each(${JSON.stringify([...told])}))`))
    .orderBy(asc(stock.id));
  const rows = heaps.map(({ stockId, itemId }) => ({
    itemId,
    beside: {
      stockId,
      onKits: kits.get(stockId as never) ?? 0,
      travelling: travelling.get(stockId as never) ?? 0,
      isHidden: hidden.has(stockId),
      labels: (labelsOf.get(stockId) ?? []).map(({ number }) => number),
    },
  }));
  return new Map(
    [...groupBy(rows, ({ itemId }) => itemId)].map(([itemId, own]) => [
      itemId,
      own.map(({ beside }) => beside),
    ]),
  );
}
