import { and, asc, eq, inArray, isNull } from 'drizzle-orm';
import { stockId as parsedStock } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import { isPastUseBy, type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { firstOut } from '@/lib/stock/firstOut';
import { type StockForm, stockForm } from '@/lib/stock/stock';
import { wallClock } from '@/lib/theatre/localTime';
import { mayRead, type Reading } from '../../reader';
import { configurationLines, items, places, setContents, sets, stock } from '../../schema';
import { onKits } from '../caseLife/standing';
import { onShelf } from '../shelf/onShelf';
import { promisedPouches } from '../short/decisions';
import { hiddenFrom } from './blind';
import { nextCaseOf } from './nextCase';

/** A lot on the shelf that a piece may be taken from. */
export interface ShelfLot {
  stockId: string;
  itemId: string;
  form: StockForm;
  lot: string | null;
  useBy: PlainDate | null;
  quantity: number;
  owner: string;
  place: string;
  metres: number;
}

/**
 * Lots of these items that may be put into a set today: the first use-by first, then the nearest. What is past use-by, today
 * or on the day of the case the set is promised to, what is held, items withdrawn or recalled, and what travels with another
 * set or lies with a kit are not among them.
 */
export async function loadShelf(
  db: Reading,
  itemIds: readonly string[],
  { setId, now }: { setId: string; now: string },
): Promise<ShelfLot[]> {
  mayRead(db, 'readHospital');
  if (itemIds.length === 0) return [];
  const today = wallClock(now).date;
  const [promised, kits, next] = await Promise.all([
    promisedPouches(db.read, now, setId),
    onKits(db.read),
    nextCaseOf(db.read, setId, now),
  ]);
  const day = next !== null && next.caseDate > today ? next.caseDate : today;
  const rows = await db.read
    .select({ stock, place: places.name, metres: places.metres })
    .from(stock)
    .innerJoin(places, eq(places.id, stock.placeId))
    .innerJoin(items, eq(items.id, stock.itemId))
    .where(
      and(
        inArray(stock.itemId, [...itemIds]),
        onShelf,
        isNull(stock.heldBecause),
        eq(items.status, 'current'),
      ),
    )
    .orderBy(asc(stock.id));
  const lots = rows.map(({ stock: row, place, metres }) => ({
    stockId: row.id,
    itemId: row.itemId,
    form: stockForm.parse(row.form),
    lot: row.lot,
    useBy: row.useBy === null ? null : plainDate.parse(row.useBy),
    quantity:
      row.quantity -
      (promised.get(parsedStock.parse(row.id)) ?? 0) -
      (kits.get(parsedStock.parse(row.id)) ?? 0),
    owner: row.owner,
    place,
    metres,
  }));
  return lots
    .filter(({ quantity, useBy }) => quantity > 0 && (useBy === null || !isPastUseBy(useBy, day)))
    .sort(firstOut);
}

/** Another set that has pieces of an item to spare, or lacks some. */
export interface SetWithItem {
  setId: string;
  code: string;
  step: string;
  place: string | null;
  metres: number | null;
  /** Above zero: more than its lines hold; below: fewer. */
  over: number;
}

/** Other sets that hold these items, with how many too many or too few, by item. Sets nobody has counted are left out. */
export async function loadOtherSets(
  db: Reading,
  itemIds: readonly string[],
  exceptSetId: string,
): Promise<ReadonlyMap<string, SetWithItem[]>> {
  mayRead(db, 'readHospital');
  if (itemIds.length === 0) return new Map();
  const rows = await db.read
    .select({
      itemId: configurationLines.itemId,
      expected: configurationLines.expected,
      found: setContents.found,
      setId: sets.id,
      code: sets.code,
      step: sets.step,
      place: places.name,
      metres: places.metres,
    })
    .from(configurationLines)
    .innerJoin(sets, eq(sets.versionId, configurationLines.versionId))
    .innerJoin(
      setContents,
      and(eq(setContents.setId, sets.id), eq(setContents.lineId, configurationLines.id)),
    )
    .leftJoin(places, eq(places.id, sets.placeId))
    .where(and(inArray(configurationLines.itemId, [...itemIds]), isNull(sets.withdrawnAt)))
    .orderBy(asc(sets.code));
  const hidden = await hiddenFrom(db);
  const byItem = new Map<string, SetWithItem[]>();
  for (const [key, own] of groupBy(rows, ({ itemId, setId }) => `${itemId} ${setId}`)) {
    const [first] = own;
    if (!first || first.setId === exceptSetId || hidden.has(first.setId)) continue;
    const over = own.reduce((sum, { found, expected }) => sum + found - expected, 0);
    const { setId, code, step, place, metres } = first;
    const itemId = key.split(' ')[0] ?? '';
    byItem.set(itemId, [...(byItem.get(itemId) ?? []), { setId, code, step, place, metres, over }]);
  }
  return byItem;
}
