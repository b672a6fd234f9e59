import { and, eq, gte, sql } from 'drizzle-orm';
import type { Queries } from '../../client';
import { stock } from '../../schema';

/** Takes issued packs off their heap. Whether they are there was judged before, inside the same write. */
export async function takeOffShelf(write: Queries, stockId: string, quantity: number): Promise<void> {
  const taken = await write
    .update(stock)
    .set({ quantity: sql`${stock.quantity} - ${quantity}`, revision: sql`${stock.revision} + 1` })
    .where(and(eq(stock.id, stockId), gte(stock.quantity, quantity)))
    .returning({ id: stock.id });
  if (taken.length !== 1) throw new Error(`${stockId} holds less than was picked from it`);
}
