import { and, eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import type { StockHold } from '@/lib/stock/hold';
import { stockOwner } from '@/lib/stock/stock';
import { takingProblems } from '@/lib/stock/taking';
import { heapWords as words } from '@/lib/wording/stock-acts';
import { appendLedger } from '../../ledger';
import { stock } from '../../schema';
import { takeOffHeap } from '../pieces/heaps';
import { recordMoves } from '../pieces/record-moves';
import { type HeapRequest, ownHeap } from './at-heap';

interface HoldStock extends HeapRequest {
  because: StockHold;
  pieces: number;
  note: string;
}

/**
 * Holds a heap, or a part of it as a heap of its own: nothing takes from it until it is let go. What lies with a kit is
 * held with the whole heap: the kit then says so.
 */
export async function holdStock(request: HoldStock): Promise<Outcome<{ stockId: string }>> {
  const { db, now, newId, person, stockId, because, pieces } = request;
  const note = request.note.trim();
  if (!may(person, 'holdStock')) return refused('notPermitted', words.mayNot(person.name, 'hold stock'));
  return db.tx(async (write) => {
    const own = await ownHeap(write, request);
    if (!own.ok) return own;
    const { row } = own.value;
    if (row.heldBecause !== null) return refused('frozen', words.heldAlready);
    const whole = pieces === row.quantity;
    const problems = [...(whole ? [] : takingProblems(own.value, pieces)), ...textProblems(note, ['note'])];
    if (problems.length > 0) return refusedFor(problems);
    let held: string = stockId;
    if (whole)
      await write
        .update(stock)
        .set({ heldBecause: because, revision: row.revision + 1 })
        .where(and(eq(stock.id, stockId), eq(stock.revision, row.revision)));
    else {
      held = newId('stock');
      await takeOffHeap(write, stockId, pieces);
      await write
        .insert(stock)
        .values({ ...row, id: held, quantity: pieces, heldBecause: because, revision: 1 });
      await recordMoves(write, [
        {
          act: 'moved',
          itemId: row.itemId,
          lot: row.lot,
          useBy: row.useBy,
          quantity: pieces,
          owner: stockOwner.parse(row.owner),
          from: { stockId },
          to: { stockId: held },
          reason: because,
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
      action: 'hold-stock',
      subjectKind: 'stock',
      subjectId: held,
      detail: { itemId: row.itemId, lot: row.lot, because, pieces, note, from: stockId },
    });
    return { ok: true, value: { stockId: held } };
  });
}
