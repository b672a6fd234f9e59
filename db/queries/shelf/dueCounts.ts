import { and, eq, isNotNull, isNull, max, min } from 'drizzle-orm';
import { addDays, type PlainDate } from '@/lib/quantities/plainDate';
import { type ClassFacts, type CountClass, classesByMustHave, classesByValue } from '@/lib/stock/countClass';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import {
  configurationLines,
  configurationVersions,
  items,
  stock,
  stockCountFigures,
  stockCountLines,
  stockCounts,
} from '../../schema';
import { readSetting } from '../settings';
import { onShelf } from './onShelf';
import { usedInYear } from './usedInYear';

/** A heap with its class and when it was last counted. */
export interface HeapToCount {
  stockId: string;
  itemId: string;
  placeId: string;
  countClass: CountClass;
  /** ISO instant; `null`: never. */
  lastCountedAt: string | null;
  due: boolean;
  /** In a count that is under way. */
  beingCounted: boolean;
}

/** Every heap that holds anything, with whether it is due to be counted today by its class. */
export async function heapsToCount(read: Queries, now: string): Promise<HeapToCount[]> {
  const [rules, heaps, last, open] = await Promise.all([
    readSetting(read, 'stock'),
    read.select({ id: stock.id, itemId: stock.itemId, placeId: stock.placeId }).from(stock).where(onShelf),
    read
      .select({ stockId: stockCountLines.stockId, at: max(stockCountFigures.doneAt) })
      .from(stockCountFigures)
      .innerJoin(stockCountLines, eq(stockCountLines.id, stockCountFigures.lineId))
      .innerJoin(stockCounts, eq(stockCounts.id, stockCountLines.countId))
      .where(and(isNotNull(stockCounts.closedAt), isNotNull(stockCountLines.stockId)))
      .groupBy(stockCountLines.stockId),
    read
      .select({ stockId: stockCountLines.stockId })
      .from(stockCountLines)
      .innerJoin(stockCounts, eq(stockCounts.id, stockCountLines.countId))
      .where(and(isNull(stockCounts.closedAt), isNull(stockCounts.abandonedAt))),
  ]);
  const itemIds = [...new Set(heaps.map(({ itemId }) => itemId))];
  const facts = await classFacts(read, itemIds, wallClock(now).date);
  const classes = rules.countClassBy === 'valueOfUse' ? classesByValue(facts) : classesByMustHave(facts);
  const days = { A: rules.countDaysA, B: rules.countDaysB, C: rules.countDaysC };
  const lastOf = new Map(last.map(({ stockId, at }) => [stockId, at]));
  const underWay = new Set(open.map(({ stockId }) => stockId));
  const today = wallClock(now).date;
  return heaps.map(({ id, itemId, placeId }) => {
    const countClass = classes.get(itemId) ?? 'C';
    const lastCountedAt = lastOf.get(id) ?? null;
    const dueFrom = lastCountedAt === null ? null : addDays(wallClock(lastCountedAt).date, days[countClass]);
    return {
      stockId: id,
      itemId,
      placeId,
      countClass,
      lastCountedAt,
      due: dueFrom === null || dueFrom <= today,
      beingCounted: underWay.has(id),
    };
  });
}

async function classFacts(
  read: Queries,
  itemIds: readonly string[],
  today: PlainDate,
): Promise<ClassFacts[]> {
  if (itemIds.length === 0) return [];
  const [prices, used, must] = await Promise.all([
    read.select({ id: items.id, unitPence: items.unitCostPence }).from(items),
    usedInYear(read, today),
    read
      .select({ itemId: configurationLines.itemId, most: min(configurationLines.mustHaveClass) })
      .from(configurationLines)
      .innerJoin(configurationVersions, eq(configurationVersions.id, configurationLines.versionId))
      .where(eq(configurationVersions.status, 'inForce'))
      .groupBy(configurationLines.itemId),
  ]);
  const mustOf = new Map(must.map((row) => [row.itemId, row.most]));
  const wanted = new Set(itemIds);
  return prices
    .filter(({ id }) => wanted.has(id))
    .map(({ id, unitPence }) => ({
      itemId: id,
      used: Math.max(0, used.get(id) ?? 0),
      unitPence,
      mustHaveClass: (mustOf.get(id) ?? null) as ClassFacts['mustHaveClass'],
    }));
}
