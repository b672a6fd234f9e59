import { eq } from 'drizzle-orm';
import { stockOwner } from '@/lib/stock/stock';
import type { Queries } from '../../client';
import { stock } from '../../schema';
import { takeOffHeap } from '../pieces/heaps';
import { recordMoves } from '../pieces/record-moves';

interface Issued {
  pick: { id: string; caseId: string; stockId: string; packId: string | null; quantity: number };
  personId: string;
  now: string;
}

/** Takes issued packs off their heap: from here on their case holds them. Whether they are there was judged before. */
export async function takeOffShelf(write: Queries, { pick, personId, now }: Issued): Promise<void> {
  const [heap] = await write.select().from(stock).where(eq(stock.id, pick.stockId));
  if (!heap) throw new Error(`there is no heap ${pick.stockId}`);
  await takeOffHeap(write, heap.id, pick.quantity);
  await recordMoves(write, [
    {
      act: 'issued',
      itemId: heap.itemId,
      lot: heap.lot,
      useBy: heap.useBy,
      quantity: pick.quantity,
      owner: stockOwner.parse(heap.owner),
      from: { stockId: heap.id },
      caseId: pick.caseId,
      pickId: pick.id,
      packId: pick.packId,
      personId,
      doneAt: now,
      enteredAt: now,
    },
  ]);
}
