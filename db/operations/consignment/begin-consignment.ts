import { eq, sql } from 'drizzle-orm';
import type { UsageLine } from '@/lib/consignment/waiting';
import type { Queries } from '../../client';
import { insertMany } from '../../insertMany';
import { items, stock, usageOrderLines, usageOrders } from '../../schema';

/** States whose all consigned stock of a maker is, but for one lot. For a hospital that is loaded as a whole. */
export async function beginConsignment(
  write: Queries,
  { makerId, lenderId, butLot }: { makerId: string; lenderId: string; butLot: string },
): Promise<void> {
  await write
    .update(stock)
    .set({ lenderId })
    .where(
      sql`${stock.owner} = 'consignment' AND ${stock.lot} IS NOT ${butLot}
        AND ${stock.itemId} IN (SELECT id FROM ${items} WHERE maker_id = ${makerId})`,
    );
}

type Said<K extends keyof typeof usageOrders.$inferInsert> = Required<
  Pick<typeof usageOrders.$inferInsert, K>
>;

/** A usage order of the past with all that was said of it, step by step as the database asks. */
export async function insertPastUsageOrder(
  write: Queries,
  order: {
    made: Omit<typeof usageOrders.$inferInsert, 'state' | 'revision'>;
    lines: readonly (UsageLine & { id: string; replace: boolean | null })[];
    approved: Said<'approvedBy' | 'approvedAt'>;
    sent: Said<'sentBy' | 'sentAt' | 'sentHow'>;
    /** `null`: its replacement is still expected. */
    settled: Said<'settledBy' | 'settledAt' | 'settledBecause'> | null;
  },
): Promise<void> {
  const { made, lines, approved, sent, settled } = order;
  await write.insert(usageOrders).values({ ...made, state: 'made', revision: 1 });
  await insertMany(
    write,
    usageOrderLines,
    lines.map((line, at) => ({ ...line, orderId: made.id, lineNo: at + 1, withdrawn: false })),
  );
  const own = eq(usageOrders.id, made.id);
  await write
    .update(usageOrders)
    .set({ ...approved, state: 'approved', revision: 2 })
    .where(own);
  await write
    .update(usageOrders)
    .set({ ...sent, state: 'sent', revision: 3 })
    .where(own);
  if (settled)
    await write
      .update(usageOrders)
      .set({ ...settled, revision: 4 })
      .where(own);
}
