import { and, eq } from 'drizzle-orm';
import type { PlaceId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { stockForm, stockOwner } from '@/lib/stock/stock';
import { takingProblems } from '@/lib/stock/taking';
import { heapWords as words } from '@/lib/wording/stock-acts';
import { appendLedger } from '../../ledger';
import { places, stock } from '../../schema';
import { putOnHeap, takeOffHeap } from '../pieces/heaps';
import { recordMoves } from '../pieces/record-moves';
import { type HeapRequest, ownHeap } from './at-heap';

interface MoveStock extends HeapRequest {
  pieces: number;
  placeId: PlaceId;
}

/**
 * Puts pieces of a heap in another place: all of it as it is, with its label, or a part of it on the heap of its kind there.
 * What is held stays held wherever it lies.
 */
export async function moveStock(request: MoveStock): Promise<Outcome<{ stockId: string }>> {
  const { db, now, newId, person, stockId, pieces, placeId } = request;
  if (!may(person, 'moveStock')) return refused('notPermitted', words.mayNot(person.name, 'move stock'));
  return db.tx(async (write) => {
    const own = await ownHeap(write, request);
    if (!own.ok) return own;
    const { row, placeName } = own.value;
    const [place] = await write.select().from(places).where(eq(places.id, placeId));
    const problems = takingProblems(own.value, pieces);
    if (!place || place.withdrawnAt !== null)
      problems.push({ path: ['placeId'], code: 'no-such-place', message: words.placeNeeded });
    else if (place.id === row.placeId)
      problems.push({ path: ['placeId'], code: 'same-place', message: words.samePlace(placeName) });
    if (problems.length > 0) return refusedFor(problems);
    let to: string = stockId;
    if (pieces === row.quantity)
      await write
        .update(stock)
        .set({ placeId, revision: row.revision + 1 })
        .where(and(eq(stock.id, stockId), eq(stock.revision, row.revision)));
    else {
      await takeOffHeap(write, stockId, pieces);
      to = await putDown(write, { row, pieces, placeId, newId });
      await recordMoves(write, [
        {
          act: 'moved',
          itemId: row.itemId,
          lot: row.lot,
          useBy: row.useBy,
          quantity: pieces,
          owner: stockOwner.parse(row.owner),
          from: { stockId },
          to: { stockId: to },
          personId: person.id,
          doneAt: now,
          enteredAt: now,
        },
      ]);
    }
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'move-stock',
      subjectKind: 'stock',
      subjectId: stockId,
      detail: { itemId: row.itemId, lot: row.lot, pieces, from: row.placeId, to: placeId, toStockId: to },
    });
    return { ok: true, value: { stockId: to } };
  });
}

/** A held part begins a held heap of its own; it is never laid on one that may be taken from. */
async function putDown(
  write: Parameters<typeof putOnHeap>[0],
  {
    row,
    pieces,
    placeId,
    newId,
  }: { row: typeof stock.$inferSelect; pieces: number; placeId: string; newId: HeapRequest['newId'] },
): Promise<string> {
  if (row.heldBecause === null)
    return putOnHeap(write, {
      itemId: row.itemId,
      form: stockForm.parse(row.form),
      lot: row.lot,
      useBy: row.useBy,
      owner: stockOwner.parse(row.owner),
      lenderId: row.lenderId,
      placeId,
      quantity: pieces,
      newId,
    });
  const id = newId('stock');
  await write.insert(stock).values({ ...row, id, placeId, quantity: pieces, revision: 1 });
  return id;
}
