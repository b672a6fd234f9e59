import { gt, sql } from 'drizzle-orm';
import type { PlainDate } from '@/lib/quantities/plainDate';
import type { Queries } from '../../client';
import { usageMonths } from '../../schema';

/** Pieces of each item that were implanted, wasted or not found in the twelve months up to this one; items without any are left out. */
export async function usedInYear(read: Queries, today: PlainDate): Promise<Map<string, number>> {
  const rows = await read
    .select({
      itemId: usageMonths.itemId,
      used: sql<number>`sum(${usageMonths.implanted} + ${usageMonths.wasted} + ${usageMonths.notFound})`,
    })
    .from(usageMonths)
    .where(gt(usageMonths.month, yearBefore(today)))
    .groupBy(usageMonths.itemId);
  return new Map(rows.map(({ itemId, used }) => [itemId, used]));
}

/** The month a year before this one, whose use no longer counts. */
const yearBefore = (today: PlainDate): string => `${Number(today.slice(0, 4)) - 1}${today.slice(4, 7)}`;
