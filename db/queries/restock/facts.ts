import { and, asc, eq, gt, inArray, isNotNull, isNull, lt, notInArray, sql } from 'drizzle-orm';
import { caseId, type ItemId, itemId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import type { ItemToRestock } from '@/lib/restock/proposal';
import { termsFor } from '@/lib/restock/terms';
import { type MustHaveClass, mustHaveClass } from '@/lib/sets/configuration';
import type { SettingValue } from '@/lib/settings/local';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import {
  casePicks,
  cases,
  configurationLines,
  items,
  plans,
  setContents,
  sets,
  stock,
  supplyOrderLines,
  supplyOrderParts,
  supplyOrders,
} from '../../schema';
import { replacementsToCome } from '../consignment/replacement';
import { ownersOnRecord, usageOfOwner } from '../consignment/usageOfOwner';
import { leavingSets } from '../loans/leavingSets';
import { readSetting } from '../settings';
import { onShelf } from '../shelf/onShelf';
import { plannedItems } from '../theatre/plannedItems';
import { demandOnRecord } from './demand';
import { loadTerms } from './terms';

/** Everything a proposal is worked out from. */
export interface RestockFacts {
  today: PlainDate;
  settings: SettingValue<'restock'>;
  /** The first day on record; `null` where the journal is empty. */
  from: PlainDate | null;
  /** Every current item that is in a set in service, on the shelf, in use or promised. */
  items: ItemToRestock[];
}

/** Cases further off are nobody's order yet. */
const HORIZON_DAYS = 730;
const DAY_MS = 86_400_000;

export async function restockFacts(db: Reading, now: string): Promise<RestockFacts> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const today = wallClock(now).date;
  const settings = await readSetting(read, 'restock');
  const [current, inSets, heaps, onOrder, committed, demand, terms] = await Promise.all([
    read.select().from(items).where(eq(items.status, 'current')).orderBy(asc(items.code)),
    linesInService(read),
    heapsToUse(read),
    piecesOnOrder(read),
    committedPieces(db, now),
    demandOnRecord(db, today, settings.recordWeeks),
    loadTerms(read),
  ]);
  const replaced = replacementsToCome(read);
  const waiting = piecesWaiting(read);
  const toRestock = current.flatMap((row): ItemToRestock[] => {
    const slots = inSets.get(row.id);
    const lots = heaps.get(row.id) ?? [];
    const record = demand.recordOf(row.id);
    const promised = committed.get(row.id) ?? [];
    const coming = onOrder.get(row.id) ?? 0;
    const toReplace = replaced.get(row.id) ?? [];
    if (!slots && lots.length === 0 && record.uses.length === 0 && promised.length === 0 && coming === 0)
      return [];
    const strictest = slots?.mustHaveClass ?? null;
    return [
      {
        itemId: itemId.parse(row.id),
        makerId: row.makerId,
        packOf: row.packMultiple,
        unitPence: row.unitCostPence,
        mustHaveClass: strictest,
        terms: termsFor(terms.ofItem.get(row.id), terms.ofMaker.get(row.makerId), settings, strictest),
        record,
        heaps: lots,
        onOrder: coming,
        toReplace: toReplace.map(({ order: number, pieces }) => ({ number, pieces })),
        usedWaiting: waiting.get(row.id) ?? 0,
        committed: promised,
        toRefill: slots?.lacking ?? 0,
      },
    ];
  });
  return { today, settings, from: demand.from, items: toRestock };
}

/** Of each item in our sets in service: the strictest class of its lines, and the pieces its slots lack. */
async function linesInService(read: Queries) {
  const rows = await read
    .select({
      itemId: configurationLines.itemId,
      strictest: sql<number>`min(${configurationLines.mustHaveClass})`,
      lacking: sql<number>`sum(max(0, ${configurationLines.expected} - coalesce(${setContents.found}, ${configurationLines.expected})))`,
    })
    .from(sets)
    .innerJoin(configurationLines, eq(configurationLines.versionId, sets.versionId))
    .leftJoin(setContents, and(eq(setContents.setId, sets.id), eq(setContents.lineId, configurationLines.id)))
    .where(and(isNull(sets.withdrawnAt), eq(sets.owner, 'ours'), notInArray(sets.id, leavingSets(read))))
    .groupBy(configurationLines.itemId);
  return new Map(
    rows.map(({ itemId: id, strictest, lacking }) => [
      id,
      { mustHaveClass: mustHaveClass.parse(strictest) as MustHaveClass, lacking },
    ]),
  );
}

/** What lies on the shelf and is not held, by item. */
async function heapsToUse(read: Queries) {
  const rows = await read
    .select({ itemId: stock.itemId, pieces: stock.quantity, useBy: stock.useBy })
    .from(stock)
    .where(and(onShelf, isNull(stock.heldBecause)));
  const lots = rows.map(({ itemId: id, pieces, useBy }) => ({
    id,
    pieces,
    useBy: useBy === null ? null : plainDate.parse(useBy),
  }));
  return groupBy(lots, ({ id }) => id);
}

/** Used pieces of owners' stock that no usage order has yet, by item. */
function piecesWaiting(read: Queries): Map<string, number> {
  const waiting = new Map<string, number>();
  for (const owner of ownersOnRecord(read))
    for (const { way, itemId: id, pieces } of usageOfOwner(read, owner).waiting)
      if (way === 'used') waiting.set(id, (waiting.get(id) ?? 0) + pieces);
  return waiting;
}

/** Pieces ordered that have not come yet, by item. */
export async function piecesOnOrder(read: Queries): Promise<Map<string, number>> {
  const rows = await read
    .select({
      itemId: supplyOrderLines.itemId,
      pieces: sql<number>`sum(${supplyOrderLines.ordered} - (SELECT coalesce(sum(part.quantity), 0) FROM ${supplyOrderParts} part WHERE part.order_line_id = ${supplyOrderLines.id}))`,
    })
    .from(supplyOrderLines)
    .innerJoin(supplyOrders, eq(supplyOrders.id, supplyOrderLines.orderId))
    .where(eq(supplyOrders.state, 'open'))
    .groupBy(supplyOrderLines.itemId);
  return new Map(rows.map(({ itemId: id, pieces }) => [id, pieces]));
}

/** What confirmed plans of booked cases take, by item and day, less what was issued to them already. */
async function committedPieces(db: Reading, now: string) {
  const { read } = db;
  const until = new Date(Date.parse(now) + HORIZON_DAYS * DAY_MS).toISOString();
  const booked = await read
    .select({ id: cases.id, caseDate: cases.caseDate })
    .from(cases)
    .innerJoin(plans, and(eq(plans.caseId, cases.id), eq(plans.status, 'confirmed')))
    .where(and(gt(cases.startsAt, now), lt(cases.startsAt, until), isNull(cases.cancelledAt)));
  const ids = booked.map(({ id }) => caseId.parse(id));
  const [planned, issued] = await Promise.all([
    plannedItems(db, ids),
    ids.length === 0
      ? []
      : read
          .select({ caseId: casePicks.caseId, itemId: casePicks.itemId, pieces: casePicks.quantity })
          .from(casePicks)
          .where(
            and(inArray(casePicks.caseId, ids), isNotNull(casePicks.issuedAt), isNotNull(casePicks.itemId)),
          ),
  ]);
  const dayOf = new Map(booked.map(({ id, caseDate }) => [id, plainDate.parse(caseDate)]));
  const takes = planned.flatMap(({ caseId: id, implants }) =>
    implants.flatMap(({ itemId: item, pieces }): { item: ItemId; pieces: number; caseDate: PlainDate }[] => {
      const out = issued.filter((one) => one.caseId === id && one.itemId === item);
      const left = pieces - out.reduce((sum, one) => sum + one.pieces, 0);
      const caseDate = dayOf.get(id);
      return left > 0 && caseDate ? [{ item, pieces: left, caseDate }] : [];
    }),
  );
  return groupBy(takes, ({ item }) => item as string);
}
