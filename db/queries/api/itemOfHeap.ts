import { eq } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { stock } from '../../schema';

/** Of which item a heap of the shelf is, and whether it is empty now; `null` where there is no such heap. */
export async function itemOfHeap(
  db: Reading,
  stockId: string,
): Promise<{ itemId: string; isEmpty: boolean } | null> {
  mayRead(db, 'readHospital');
  const [row] = await db.read
    .select({ itemId: stock.itemId, quantity: stock.quantity })
    .from(stock)
    .where(eq(stock.id, stockId));
  return row ? { itemId: row.itemId, isEmpty: row.quantity === 0 } : null;
}
