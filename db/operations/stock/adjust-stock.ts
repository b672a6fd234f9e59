import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { isPastUseBy } from '@/lib/quantities/plainDate';
import { offered } from '@/lib/reasons/reason';
import { ADJUSTMENTS, type AdjustReason } from '@/lib/stock/adjustment';
import { stockOwner } from '@/lib/stock/stock';
import { takingProblems } from '@/lib/stock/taking';
import { wallClock } from '@/lib/theatre/localTime';
import { reasonsWords } from '@/lib/wording/reasons';
import { heapWords as words } from '@/lib/wording/stock-acts';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { reasonsOf } from '../../queries/reasons/reasons';
import type { HeapAt } from '../../queries/shelf/heapAt';
import { addToHeap, takeOffHeap } from '../pieces/heaps';
import { recordMoves } from '../pieces/record-moves';
import { endPack } from '../turns/end-pack';
import { type HeapRequest, ownHeap } from './at-heap';

interface AdjustStock extends HeapRequest {
  reason: AdjustReason;
  pieces: number;
  /** How it came about; empty where nothing is to be said. */
  note: string;
  /** The hospital's own reason, where pieces are wasted; without one it is not stated. */
  reasonId?: string | null;
}

const MOST_PIECES = 99_999;

/** Corrects the record of a heap for a stated reason: pieces found, not found, damaged, past use-by, or entered wrongly. */
export async function adjustStock(request: AdjustStock): Promise<Outcome<{ quantity: number }>> {
  const { db, now, person, stockId, reason, pieces, reasonId = null } = request;
  const note = request.note.trim();
  if (!may(person, 'adjustStock'))
    return refused('notPermitted', words.mayNot(person.name, 'correct what is on the shelves'));
  const { act, direction, needsNote, endsBarrier, ...kept } = ADJUSTMENTS[reason];
  return db.tx(async (write) => {
    const own = await ownHeap(write, request);
    if (!own.ok) return own;
    const { row, labels } = own.value;
    const problems = [
      ...(direction === 'fewer' ? takingProblems(own.value, pieces) : addingProblems(pieces)),
      ...(reason === 'pastUseBy' ? pastProblems(own.value, now) : []),
      ...(note === '' && needsNote
        ? [{ path: ['note'], code: 'needed', message: words.noteNeeded }]
        : textProblems(note, ['note'])),
      ...(reasonId === null ? [] : await reasonProblems(write, reasonId, act === 'wasted')),
    ];
    if (problems.length > 0) return refusedFor(problems);
    if (direction === 'more') await addToHeap(write, stockId, pieces);
    else await takeOffHeap(write, stockId, pieces);
    // a label on what went into the bin no longer stands for a sealed pack
    if (endsBarrier) for (const { packId } of labels) await endPack(write, packId);
    await recordMoves(write, [
      {
        act,
        itemId: row.itemId,
        lot: row.lot,
        useBy: row.useBy,
        quantity: pieces,
        owner: stockOwner.parse(row.owner),
        ...(direction === 'more' ? { to: { stockId } } : { from: { stockId } }),
        reason: kept.reason,
        reasonId,
        source: stockId,
        personId: person.id,
        doneAt: now,
        enteredAt: now,
      },
    ]);
    const quantity = row.quantity + (direction === 'more' ? pieces : -pieces);
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'adjust-stock',
      subjectKind: 'stock',
      subjectId: stockId,
      detail: {
        itemId: row.itemId,
        lot: row.lot,
        reason,
        ...(reasonId === null ? {} : { reasonId }),
        pieces,
        note,
        before: row.quantity,
        after: quantity,
      },
    });
    return { ok: true, value: { quantity } };
  });
}

function addingProblems(pieces: number): Problem[] {
  if (Number.isInteger(pieces) && pieces >= 1 && pieces <= MOST_PIECES) return [];
  return [{ path: ['pieces'], code: 'whole-pieces', message: words.wholePieces }];
}

/** Past use-by is a matter of the day, not of the person. */
function pastProblems({ facts: { useBy } }: HeapAt, now: string): Problem[] {
  if (useBy !== null && isPastUseBy(useBy, wallClock(now).date)) return [];
  return [{ path: ['reason'], code: 'not-past', message: words.notPast(useBy) }];
}

/** A reason of the hospital's own is for what is wasted, and one of those in use. */
async function reasonProblems(write: Queries, reasonId: string, isWaste: boolean): Promise<Problem[]> {
  const known = offered(await reasonsOf(write), 'waste').some(({ id }) => id === reasonId);
  if (known && isWaste) return [];
  return [{ path: ['reasonId'], code: 'unknown', message: reasonsWords.noSuch }];
}
