import type { MoveAct } from '../pieces/move';
import type { Outcome, SlotEvent, SlotHistory } from './slotHistory';

/** One move into a slot or out of it, as the journal of pieces has it; `doneAt` as an ISO instant. */
export interface SlotMove {
  seq: number;
  way: 'in' | 'out';
  act: MoveAct;
  lot: string | null;
  quantity: number;
  caseId: string | null;
  doneAt: string;
}

/** What became of pieces that left by each act; any other act is another way. */
const OUTCOME_OF: Partial<Record<MoveAct, Outcome>> = {
  implanted: 'implanted',
  wasted: 'wasted',
  notFound: 'notFound',
  setAside: 'setAside',
  takenOut: 'shelf',
};

/**
 * The history of a slot from its moves, in the order in which they were done. What was not found and is explained later
 * never lay lost: the two cancel, and its use stands for both.
 *
 * @param moves in the order in which they were entered
 * @param before pieces that lay there as they begin, none of them of the lot asked about
 */
export function slotHistory(moves: readonly SlotMove[], before = 0): SlotHistory {
  const events = explainedAway(moves)
    .sort((a, b) => (a.doneAt < b.doneAt ? -1 : a.doneAt > b.doneAt ? 1 : a.seq - b.seq))
    .map(
      ({ way, act, lot, quantity, caseId, doneAt }): SlotEvent =>
        way === 'in'
          ? { kind: 'in', atMs: Date.parse(doneAt), quantity, lot }
          : {
              kind: 'out',
              atMs: Date.parse(doneAt),
              quantity,
              lot,
              case: caseId,
              outcome: OUTCOME_OF[act] ?? 'other',
            },
    );
  return { before, events, now: null };
}

function explainedAway(moves: readonly SlotMove[]): SlotMove[] {
  if (!moves.some(({ act }) => act === 'explained')) return moves.slice();
  const left = moves.map((move) => ({ ...move }));
  for (const [at, explained] of left.entries()) {
    if (explained.act !== 'explained') continue;
    for (const lost of left.slice(0, at).reverse()) {
      if (lost.act !== 'notFound' || lost.way !== 'out' || lost.quantity === 0) continue;
      const both = Math.min(lost.quantity, explained.quantity);
      lost.quantity -= both;
      explained.quantity -= both;
      if (explained.quantity === 0) break;
    }
  }
  return left.filter(({ quantity }) => quantity > 0);
}
