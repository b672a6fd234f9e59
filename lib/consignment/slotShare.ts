import { slotBounds } from '../trace/slotBounds';
import type { LotAsked } from '../trace/slotHistory';
import { type SlotMove, slotHistory } from '../trace/slotMoves';
import { outcomeOf, type UsageOutcome } from './outcome';

/** Whose pieces a move of a slot moved: the owner's asked about, somebody else's (ours too), or nobody knows. */
export type Whose = 'theirs' | 'others' | null;

export interface SlotMoveOfOwner extends SlotMove {
  reason: string | null;
  whose: Whose;
}

/** Pieces that left a slot in one way, of which some may have been the owner's. */
export interface SlotShare {
  caseId: string | null;
  outcome: UsageOutcome | 'setAside';
  /** Pieces of it that are told to nobody, and how many of those at least and at most were theirs. */
  pieces: number;
  lo: number;
  hi: number;
  moves: number[];
}

export interface SlotShares {
  /** Moves that took the owner's pieces and no others, with how that is known. */
  certain: { seq: number; knownBy: 'lotRead' | 'othersTooFew' }[];
  uncertain: SlotShare[];
  /** What lies in the slot now. */
  now: { pieces: number; lo: number; hi: number };
  contradicted: boolean;
}

/** The owner takes the place of a lot: a slot mixes both alike. */
const THEIRS = 'theirs';
const OTHERS = 'others';

/**
 * What of one slot was one owner's, where pieces of several owners lay together: the exact bounds of a trace, with the owner
 * in the place of the lot. A move is certain where its lot was read, or where everything that left in that way must have
 * been theirs; all else is between a least and a most, and is told to the owner as uncertain.
 *
 * @param moves from a moment at which the slot was empty, or of which the first is the first of the owner's
 * @param firstHereAtMs when the first piece of the owner's came into the house; before it nothing in the slot was theirs
 */
export function slotShares(moves: readonly SlotMoveOfOwner[], firstHereAtMs: number | null): SlotShares {
  const asked: LotAsked = { lot: THEIRS, firstHereAtMs };
  const tokens = moves.map((move) => ({ ...move, lot: tokenOf(move.whose) }));
  const bounds = slotBounds(slotHistory(tokens), asked);
  const certain: SlotShares['certain'] = [];
  const uncertain: SlotShare[] = [];
  const left = leftUnexplained(moves);
  for (const one of bounds.destinations) {
    const own = moves.flatMap((move) => {
      const quantity = left.get(move.seq) ?? 0;
      const isOf = move.way === 'out' && move.caseId === one.case && traceOutcomeOf(move) === one.outcome;
      return isOf && quantity > 0 ? [{ ...move, quantity }] : [];
    });
    const allTheirs = one.lo === one.pieces && !bounds.contradiction;
    const sure = own.filter((move) => (allTheirs || move.whose === 'theirs') && isTold(move));
    for (const { seq, whose } of sure)
      certain.push({ seq, knownBy: whose === 'theirs' ? 'lotRead' : 'othersTooFew' });
    const others = own.filter((move) => !sure.includes(move) && move.whose !== 'others');
    const told = sure.reduce((sum, { quantity }) => sum + quantity, 0);
    const hi = one.hi - told;
    const [first] = others;
    if (!first || hi <= 0) continue;
    const outcome = one.outcome === 'setAside' ? 'setAside' : outcomeOf(first.act, first.reason);
    // what was taken to a shelf, or elsewhere, is no use
    if (outcome === null || outcome === 'foundAgain') continue;
    uncertain.push({
      caseId: one.case,
      outcome,
      pieces: others.reduce((sum, { quantity }) => sum + quantity, 0),
      lo: Math.max(0, one.lo - told),
      hi,
      moves: others.map(({ seq }) => seq),
    });
  }
  const { pieces, lo, hi } = bounds.now;
  return { certain, uncertain, now: { pieces, lo, hi }, contradicted: bounds.contradiction !== null };
}

const tokenOf = (whose: Whose) => (whose === 'theirs' ? THEIRS : whose === 'others' ? OTHERS : null);

const traceOutcomeOf = ({ act }: SlotMoveOfOwner) =>
  act === 'takenOut'
    ? 'shelf'
    : act === 'implanted' || act === 'wasted' || act === 'notFound' || act === 'setAside'
      ? act
      : 'other';

/**
 * Whether a move is final enough to be told to an owner. What was not found at a count may be explained by a record of use that
 * comes late, and pieces put aside are mended or discarded first.
 */
const isTold = ({ act, reason }: SlotMoveOfOwner) =>
  act === 'implanted' || act === 'wasted' || (act === 'notFound' && reason !== 'bench');

/** Of each move, the pieces no later one explains: what was not found is then what was used, and its use stands for both. */
function leftUnexplained(moves: readonly SlotMoveOfOwner[]): Map<number, number> {
  const left = new Map(moves.map(({ seq, quantity }) => [seq, quantity]));
  for (const [at, explained] of moves.entries()) {
    if (explained.act !== 'explained') continue;
    let toExplain = explained.quantity;
    for (const lost of moves.slice(0, at).reverse()) {
      if (lost.act !== 'notFound' || lost.way !== 'out' || toExplain === 0) continue;
      const both = Math.min(left.get(lost.seq) ?? 0, toExplain);
      left.set(lost.seq, (left.get(lost.seq) ?? 0) - both);
      toExplain -= both;
    }
  }
  return left;
}
