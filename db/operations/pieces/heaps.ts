import { and, eq, gte, isNull, sql } from 'drizzle-orm';
import { type NewId, type StockId, stockId } from '@/lib/identity/ids';
import type { StockForm } from '@/lib/stock/stock';
import type { Queries } from '../../client';
import { stock } from '../../schema';

/** What makes pieces one heap: the same item, form, lot, use-by and owner, at one place. */
export interface HeapKind {
  itemId: string;
  form: StockForm;
  lot: string | null;
  useBy: string | null;
  owner: 'ours' | 'consignment';
  /** The owner of what is on consignment; `null`: ours, or nobody has stated it. */
  lenderId: string | null;
  placeId: string;
}

/**
 * Puts pieces on the heap of their kind, or begins one. A heap that is held is another heap: what is put down beside it is
 * not held by that. The caller records the move (`record-moves.ts`).
 */
export async function putOnHeap(
  write: Queries,
  { quantity, newId, ...kind }: HeapKind & { quantity: number; newId: NewId },
): Promise<StockId> {
  const same = (
    column: typeof stock.lot | typeof stock.useBy | typeof stock.lenderId,
    value: string | null,
  ) => (value === null ? isNull(column) : eq(column, value));
  const [heap] = await write
    .select({ id: stock.id })
    .from(stock)
    .where(
      and(
        eq(stock.itemId, kind.itemId),
        eq(stock.form, kind.form),
        same(stock.lot, kind.lot),
        same(stock.useBy, kind.useBy),
        eq(stock.owner, kind.owner),
        same(stock.lenderId, kind.lenderId),
        eq(stock.placeId, kind.placeId),
        isNull(stock.heldBecause),
      ),
    );
  if (heap) {
    await addToHeap(write, heap.id, quantity);
    return stockId.parse(heap.id);
  }
  const id = stockId.parse(newId('stock'));
  await write.insert(stock).values({ ...kind, id, quantity, heldBecause: null, revision: 1 });
  return id;
}

/** Puts pieces back on the very heap they came from. */
export async function addToHeap(write: Queries, id: string, quantity: number): Promise<void> {
  const added = await write
    .update(stock)
    .set({ quantity: sql`${stock.quantity} + ${quantity}`, revision: sql`${stock.revision} + 1` })
    .where(eq(stock.id, id))
    .returning({ id: stock.id });
  if (added.length !== 1) throw new Error(`there is no heap ${id}`);
}

/** Takes pieces off a heap; whether they may be taken was judged before, inside the same write. */
export async function takeOffHeap(write: Queries, id: string, quantity: number): Promise<void> {
  const taken = await write
    .update(stock)
    .set({ quantity: sql`${stock.quantity} - ${quantity}`, revision: sql`${stock.revision} + 1` })
    .where(and(eq(stock.id, id), gte(stock.quantity, quantity)))
    .returning({ id: stock.id });
  if (taken.length !== 1) throw new Error(`${id} holds less than is taken from it`);
}
