import { groupBy } from '@/lib/lists/groupBy';
import type { MoveAct } from '@/lib/pieces/move';
import { daysBetween } from './days';
import type { Use, UseRecord } from './record';

/** Acts of the journal that tell of demand, or take back what told of it. */
export const DEMAND_ACTS = [
  'implanted',
  'wasted',
  'notFound',
  'discarded',
  'found',
  'explained',
] as const satisfies readonly MoveAct[];

/** A move as demand is read from it. */
export interface DemandMove {
  act: MoveAct;
  itemId: string;
  quantity: number;
  /** `YYYY-MM-DD`. */
  doneOn: string;
  caseId: string | null;
  fromStockId: string | null;
  /** `set/line` a piece left or came to; `null` for what was no slot's. */
  slot: string | null;
}

/**
 * The record of each item from moves in the order they were made: what cases took for good, and what was worn out. What
 * went off the shelf without a case (past its use-by, dropped there) is not demand. A piece not found that was found or
 * explained afterwards was not taken.
 *
 * @param from    the first day on record
 * @param until   the first day after it
 * @param knownOn when the need of a case was known, by its plan; nothing where it never was
 */
export function recordsOf(
  moves: readonly DemandMove[],
  { from, until, knownOn }: { from: string; until: string; knownOn: ReadonlyMap<string, string> },
): Map<string, UseRecord> {
  const days = Math.max(0, daysBetween(from, until));
  return new Map(
    [...groupBy(moves, ({ itemId }) => itemId)].map(([itemId, own]) => [
      itemId,
      { days, uses: usesOf(taken(own), from, until, knownOn) },
    ]),
  );
}

/** What is left when everything found again is taken off what was not found, the latest first. */
function taken(moves: readonly DemandMove[]): DemandMove[] {
  const left: DemandMove[] = [];
  for (const move of moves) {
    if (move.act !== 'found' && move.act !== 'explained') {
      const offShelf = move.fromStockId !== null && move.caseId === null;
      if (!offShelf) left.push({ ...move });
      continue;
    }
    let back = move.quantity;
    for (const earlier of left.toReversed()) {
      if (earlier.act !== 'notFound' || earlier.slot !== move.slot) continue;
      const pieces = Math.min(back, earlier.quantity);
      earlier.quantity -= pieces;
      back -= pieces;
    }
  }
  return left.filter(({ quantity }) => quantity > 0);
}

function usesOf(
  moves: readonly DemandMove[],
  from: string,
  until: string,
  knownOn: ReadonlyMap<string, string>,
): Use[] {
  const within = moves.filter(({ doneOn }) => doneOn >= from && doneOn < until);
  // of one case all is one use, on the day of its first move; what was worn out belongs to no case, and is one a day
  const uses = groupBy(within, ({ caseId, doneOn }) => caseId ?? doneOn);
  return [...uses.values()]
    .map((all): Use => {
      const [doneOn = from] = all.map((move) => move.doneOn).sort();
      const known = knownOn.get(all[0]?.caseId ?? '');
      return {
        day: daysBetween(from, doneOn),
        pieces: all.reduce((sum, { quantity }) => sum + quantity, 0),
        bookedDaysBefore: known === undefined ? null : Math.max(0, daysBetween(known, doneOn)),
      };
    })
    .sort((a, b) => a.day - b.day);
}
