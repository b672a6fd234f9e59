import { and, eq, gt, inArray, isNull, or } from 'drizzle-orm';
import type { NewId, StockCountLineId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { ADJUSTMENTS } from '@/lib/stock/adjustment';
import { stockForm, stockOwner } from '@/lib/stock/stock';
import { stockCountWords as words } from '@/lib/wording/stock-acts';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { type CountedLine, countOnRecord } from '../../queries/shelf/countOnRecord';
import { heapAt } from '../../queries/shelf/heapAt';
import { pieceMoves, stockCountLines } from '../../schema';
import { addToHeap, putOnHeap, takeOffHeap } from '../pieces/heaps';
import { recordMoves } from '../pieces/record-moves';
import type { CountRequest } from './close-count';

interface DecideDifference extends Omit<CountRequest, 'baseRevision'> {
  newId: NewId;
  lineId: StockCountLineId;
  /** `left`: nothing is changed, and why. */
  decision: 'accepted' | 'left';
  because: string;
}

/**
 * Decides about one difference of a closed count. Accepted, as many pieces more or fewer are found or not found, from what
 * the record is now: whatever was picked or issued since stays as it is. A line is decided once, so no revision is asked for.
 */
export async function decideDifference(
  request: DecideDifference,
): Promise<Outcome<{ difference: number }, never>> {
  const { db, now, newId, person, countId, lineId, decision } = request;
  const because = request.because.trim();
  if (!may(person, 'decideStockCount'))
    return refused('notPermitted', words.mayNot(person.name, 'decide about differences'));
  return db.tx(async (write) => {
    const found = await countOnRecord(write, countId);
    if (!found) return refused('notFound', words.noSuchCount);
    const line = found.lines.find(({ row }) => row.id === lineId);
    if (!line) return refused('notFound', words.noSuchLine);
    const { row, difference } = line;
    if (row.decision !== null && row.decision === decision && row.decidedBy === person.id)
      return { ok: true, value: { difference: difference ?? 0 } };
    if (found.stage !== 'toDecide' || row.decision !== null || (difference ?? 0) === 0)
      return refused('frozen', words.notToDecide);
    if (person.id === found.count.begunBy || person.id === found.count.recountBy)
      return refused('notPermitted', words.counterDecides(person.name));
    const problems =
      because === '' && decision === 'left'
        ? [{ path: ['because'], code: 'needed', message: words.becauseNeeded }]
        : textProblems(because, ['because']);
    if (problems.length > 0) return refusedFor(problems);
    let heapId = row.stockId;
    if (decision === 'accepted') {
      const placed = await apply(write, { line, placeId: found.count.placeId, now, newId });
      if (!placed.ok) return placed;
      heapId = placed.value;
      const pieces = Math.abs(difference ?? 0);
      const more = (difference ?? 0) > 0;
      await recordMoves(write, [
        {
          act: more ? 'found' : 'notFound',
          itemId: row.itemId,
          lot: row.lot,
          useBy: row.useBy,
          quantity: pieces,
          owner: stockOwner.parse(row.owner),
          ...(more ? { to: { stockId: heapId } } : { from: { stockId: heapId } }),
          reason: 'shelf',
          source: lineId,
          personId: person.id,
          doneAt: now,
          enteredAt: now,
        },
      ]);
    }
    await write
      .update(stockCountLines)
      .set({ decision, decidedBy: person.id, decidedAt: now, because: because === '' ? null : because })
      .where(and(eq(stockCountLines.id, lineId), isNull(stockCountLines.decision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'decide-stock-difference',
      subjectKind: 'stockCount',
      subjectId: countId,
      detail: {
        lineId,
        stockId: heapId,
        itemId: row.itemId,
        lot: row.lot,
        counted: line.standing?.pieces ?? null,
        expected: line.standing?.expected ?? null,
        difference,
        decision,
        because,
      },
    });
    return { ok: true, value: { difference: difference ?? 0 } };
  });
}

/** Changes the heap by the difference; answers which heap it was. */
async function apply(
  write: Queries,
  {
    line: { row, difference, standing },
    placeId,
    now,
    newId,
  }: { line: CountedLine; placeId: string; now: string; newId: NewId },
): Promise<Outcome<string, never>> {
  const pieces = Math.abs(difference ?? 0);
  if (row.stockId === null) {
    const kind = {
      itemId: row.itemId,
      form: stockForm.parse(row.form),
      lot: row.lot,
      useBy: row.useBy,
      owner: stockOwner.parse(row.owner),
      // whoever counted it saw that it is not ours, not whose it is
      lenderId: null,
      placeId,
    };
    return { ok: true, value: await putOnHeap(write, { ...kind, quantity: pieces, newId }) };
  }
  if (await correctedSince(write, row.stockId, standing?.journalSeq ?? 0))
    return refused('conflict', words.changedSince(row.lot));
  if ((difference ?? 0) > 0) await addToHeap(write, row.stockId, pieces);
  else {
    const heap = await heapAt(write, row.stockId, now);
    if (!heap || heap.free < pieces) return refused('conflict', words.goneSince);
    await takeOffHeap(write, row.stockId, pieces);
  }
  return { ok: true, value: row.stockId };
}

/** Whether the heap's record was corrected, by another count or by hand, after it was counted. */
async function correctedSince(write: Queries, heapId: string, seq: number): Promise<boolean> {
  const [later] = await write
    .select({ seq: pieceMoves.seq })
    .from(pieceMoves)
    .where(
      and(
        gt(pieceMoves.seq, seq),
        or(eq(pieceMoves.fromStockId, heapId), eq(pieceMoves.toStockId, heapId)),
        or(
          inArray(pieceMoves.act, ['found', 'notFound', 'wasted', 'sentBack']),
          and(eq(pieceMoves.act, 'received'), eq(pieceMoves.reason, ADJUSTMENTS.enteredTooFew.reason)),
        ),
      ),
    )
    .limit(1);
  return later !== undefined;
}
