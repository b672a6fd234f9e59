import { type SQL, sql } from 'drizzle-orm';
import type { PlainDate } from '@/lib/quantities/plainDate';
import type { Queries } from '../../client';

/** The months of each item, item by item: what was used in other years is not read. */
const usedSince = (month: string): SQL => sql`
  SELECT item.id AS itemId, sum(usage.implanted + usage.wasted + usage.not_found) AS used
    FROM items item CROSS JOIN usage_months usage ON usage.item_id = item.id AND usage.month > ${month}
    GROUP BY item.id`;

/** Pieces of each item that were implanted, wasted or not found in the twelve months up to this one; items without any are left out. */
export async function usedInYear(read: Queries, today: PlainDate): Promise<Map<string, number>> {
  const rows = read.all(usedSince(yearBefore(today))) as { itemId: string; used: number }[];
  return new Map(rows.map(({ itemId, used }) => [itemId, used]));
}

/** The month a year before this one, whose use no longer counts. */
const yearBefore = (today: PlainDate): string => `${Number(today.slice(0, 4)) - 1}${today.slice(4, 7)}`;
