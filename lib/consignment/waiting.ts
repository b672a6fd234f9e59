import type { MoveAct } from '../pieces/move';
import { outcomeOf, type UsageOutcome } from './outcome';

/** By what a piece is known to be its owner's: its heap, its lot read as it left a slot, or that no others were there. */
export type KnownBy = 'heap' | 'lotRead' | 'othersTooFew';

/** A move of pieces that are certainly of one owner, as the journal has it. */
export interface OwnedMove {
  seq: number;
  act: MoveAct;
  reason: string | null;
  itemId: string;
  lot: string | null;
  useBy: string | null;
  pieces: number;
  caseId: string | null;
  doneOn: string;
  knownBy: KnownBy;
  /** A corrected record of use took it back. */
  takenBack: boolean;
  /** What usage orders that stand have of it. */
  charged: boolean;
  creditedAlready: boolean;
}

/** What a usage order has, or is to have, a line of. */
export interface UsageLine {
  way: 'used' | 'takenBack';
  moveSeq: number;
  itemId: string;
  lot: string | null;
  useBy: string | null;
  pieces: number;
  outcome: UsageOutcome;
  caseId: string | null;
  doneOn: string;
  knownBy: KnownBy;
}

/**
 * What waits for a usage order: every use that no order has yet, and, of what an order has and was corrected since, a line
 * that takes it back. What was not found and is found again is taken back as far as so much was not found of the same lot:
 * what turns up beyond that was never told to the owner as gone, and is a matter of the count.
 *
 * @param moves all of one owner, in the order of the journal
 */
export function waitingLines(moves: readonly OwnedMove[]): UsageLine[] {
  const lines: UsageLine[] = [];
  const gone = new Map<string, number>();
  for (const move of [...moves].sort((a, b) => a.seq - b.seq)) {
    const outcome = outcomeOf(move.act, move.reason);
    if (outcome === null) continue;
    const { seq: moveSeq, itemId, lot, useBy, pieces, caseId, doneOn, knownBy } = move;
    const line = { moveSeq, itemId, lot, useBy, pieces, outcome, caseId, doneOn, knownBy };
    if (move.takenBack) {
      if (move.charged && !move.creditedAlready) lines.push({ ...line, way: 'takenBack' });
      continue;
    }
    const key = `${itemId} ${lot ?? ''}`;
    if (outcome === 'notFound') gone.set(key, (gone.get(key) ?? 0) + pieces);
    if (outcome !== 'foundAgain') {
      if (!move.charged) lines.push({ ...line, way: 'used' });
      continue;
    }
    const back = Math.min(pieces, gone.get(key) ?? 0);
    gone.set(key, (gone.get(key) ?? 0) - back);
    if (back > 0 && !move.creditedAlready) lines.push({ ...line, pieces: back, way: 'takenBack' });
  }
  return lines;
}
