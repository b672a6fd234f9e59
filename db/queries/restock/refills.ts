import { and, asc, eq, inArray, isNull, notInArray, sql } from 'drizzle-orm';
import { groupBy } from '@/lib/lists/groupBy';
import { isPastUseBy, plainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { mayRead, type Reading } from '../../reader';
import { configurationLines, items, places, setContents, sets, stock } from '../../schema';
import { hiddenFrom } from '../bench/blind';
import { keptHoldings } from '../keptHoldings';
import { leavingSets } from '../loans/leavingSets';
import { heapsHiddenFrom } from '../shelf/blindHeaps';
import { onShelf } from '../shelf/onShelf';

/** A slot that lacks pieces, and what the shelf has of them. */
export interface Refill {
  key: string;
  setId: string;
  set: string;
  step: string;
  layer: number;
  row: number;
  slot: number;
  itemId: string;
  code: string;
  name: string;
  mustHaveClass: number;
  found: number;
  expected: number;
  /** Pieces of it on the shelf that can be used, for this slot and all others; `null` while the reader counts some of them. */
  onShelf: number | null;
  /** The first to take: first expired, first out. */
  first: { lot: string | null; useBy: string | null; place: string } | null;
}

/** Every slot of our sets in service that lacks pieces; of a set the reader is to check blind, none. */
export async function slotsToRefill(db: Reading, now: string): Promise<Refill[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const today = wallClock(now).date;
  // most sets lack nothing: their lines are not gone through
  const lacking = [...(await keptHoldings(read))].flatMap(([id, { lacks }]) => (lacks ? [id] : []));
  const [rows, hidden, counted] = await Promise.all([
    read
      .select({
        setId: sets.id,
        set: sets.code,
        step: sets.step,
        lineId: configurationLines.id,
        layer: configurationLines.layer,
        row: configurationLines.row,
        slot: configurationLines.slot,
        itemId: items.id,
        code: items.code,
        name: items.name,
        mustHaveClass: configurationLines.mustHaveClass,
        found: setContents.found,
        expected: configurationLines.expected,
      })
      .from(sets)
      .innerJoin(configurationLines, eq(configurationLines.versionId, sets.versionId))
      .innerJoin(
        setContents,
        and(eq(setContents.setId, sets.id), eq(setContents.lineId, configurationLines.id)),
      )
      .innerJoin(items, eq(items.id, configurationLines.itemId))
      .where(
        and(
          inArray(sets.id, sql`(SELECT value FROM json_each(${JSON.stringify(lacking)}))`),
          isNull(sets.withdrawnAt),
          eq(sets.owner, 'ours'),
          notInArray(sets.id, leavingSets(read)),
          sql`${setContents.found} < ${configurationLines.expected}`,
        ),
      )
      .orderBy(
        asc(sets.code),
        asc(configurationLines.layer),
        asc(configurationLines.row),
        asc(configurationLines.slot),
      ),
    hiddenFrom(db),
    heapsHiddenFrom(db),
  ]);
  const shown = rows.filter(({ setId }) => !hidden.has(setId as never));
  const ids = [...new Set(shown.map(({ itemId }) => itemId))];
  const heaps = ids.length === 0 ? [] : await heapsOf(db, ids, today);
  const byItem = groupBy(heaps, ({ itemId }) => itemId);
  return shown.map(({ lineId, ...row }) => {
    const own = byItem.get(row.itemId) ?? [];
    const [first] = own;
    return {
      ...row,
      key: `${row.setId}/${lineId}`,
      onShelf: own.some(({ id }) => counted.has(id))
        ? null
        : own.reduce((sum, { quantity }) => sum + quantity, 0),
      first: first ? { lot: first.lot, useBy: first.useBy, place: first.place } : null,
    };
  });
}

/** Heaps that can be used today, the first to expire first, those without a use-by last. */
async function heapsOf({ read }: Reading, ids: readonly string[], today: string) {
  const rows = await read
    .select({
      id: stock.id,
      itemId: stock.itemId,
      lot: stock.lot,
      useBy: stock.useBy,
      quantity: stock.quantity,
      place: places.name,
    })
    .from(stock)
    .innerJoin(places, eq(places.id, stock.placeId))
    .where(and(inArray(stock.itemId, [...ids]), onShelf, isNull(stock.heldBecause)))
    .orderBy(sql`${stock.useBy} IS NULL`, asc(stock.useBy), asc(stock.id));
  const day = plainDate.parse(today);
  return rows.filter(({ useBy }) => useBy === null || !isPastUseBy(plainDate.parse(useBy), day));
}
