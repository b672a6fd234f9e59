import { and, eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { ENDS_ELSEWHERE } from '@/lib/stock/hold';
import { heldWords } from '@/lib/wording/stock';
import { heapWords as words } from '@/lib/wording/stock-acts';
import { appendLedger } from '../../ledger';
import { openRecallsOf } from '../../queries/shelf/heapAt';
import { stock } from '../../schema';
import { type HeapRequest, ownHeap } from './at-heap';

interface LetStockGo extends HeapRequest {
  reason: string;
  /** That this person proved who they are and said `iLiftThisHold`. */
  attestation: Attestation;
}

/**
 * Lets a held heap go, for a stated reason and by a person who stands for it. What a load holds ends with that load; what a
 * recall holds stays as long as the recall is open, and ends by a person, not by itself.
 */
export async function letStockGo(request: LetStockGo): Promise<Outcome<{ revision: number }>> {
  const { db, now, person, stockId, attestation } = request;
  const reason = request.reason.trim();
  if (!may(person, 'liftHold'))
    return refused('notPermitted', words.mayNot(person.name, 'let held stock go'));
  if (!attests(attestation, person.id, 'iLiftThisHold', now))
    return refused('notPermitted', words.proveFirst);
  const problems =
    reason === ''
      ? [{ path: ['reason'], code: 'needed', message: words.reasonNeeded }]
      : textProblems(reason, ['reason']);
  if (problems.length > 0) return refusedFor(problems);
  return db.tx(async (write) => {
    const own = await ownHeap(write, request);
    if (!own.ok) return own;
    const { row } = own.value;
    if (row.heldBecause === null) return refused('frozen', words.notHeld);
    if (ENDS_ELSEWHERE.has(row.heldBecause))
      return refused('frozen', words.holdStays(heldWords(row.heldBecause)));
    if (row.heldBecause === 'recall') {
      const open = (await openRecallsOf(write, [row.itemId])).find(
        ({ lot }) => lot === null || row.lot === null || lot === row.lot,
      );
      if (open) return refused('frozen', words.underRecall(open.number));
    }
    const revision = row.revision + 1;
    await write
      .update(stock)
      .set({ heldBecause: null, revision })
      .where(and(eq(stock.id, stockId), eq(stock.revision, row.revision)));
    const { meaning, method, at } = attestation;
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'let-stock-go',
      subjectKind: 'stock',
      subjectId: stockId,
      detail: {
        itemId: row.itemId,
        lot: row.lot,
        because: row.heldBecause,
        reason,
        attested: { meaning, method, at },
      },
    });
    return { ok: true, value: { revision } };
  });
}
