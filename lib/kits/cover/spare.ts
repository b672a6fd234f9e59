import { closedBy } from './closure';
import { matchPieces } from './pieces';
import { type AtHand, type CoverChain, type CoverProblem, NOTHING } from './problem';

/** More spare than this is told as this much. */
export const MOST_SPARE = 3;

/** How many pieces a chain can lose and still close: the smallest number that breaks it, less one. */
export function chainSpare(chain: CoverChain, atHand: AtHand): number {
  for (let losses = 1; losses <= MOST_SPARE; losses += 1)
    if (breaksWith(chain, atHand, losses)) return losses - 1;
  return MOST_SPARE;
}

/** Whether some `losses` pieces break it: any breaking loss takes a piece of every chain that still closes. */
function breaksWith(chain: CoverChain, atHand: AtHand, losses: number): boolean {
  const alive = closedBy(chain, atHand);
  if (!alive) return true;
  if (losses === 0) return false;
  for (const item of oneWay(chain, alive)) {
    const less = atHand.slice();
    less[item] = (less[item] ?? 0) - 1;
    if (breaksWith(chain, less, losses - 1)) return true;
  }
  return false;
}

/** The items of one whole chain among the candidates that live. */
function oneWay(chain: CoverChain, alive: boolean[][]): number[] {
  const chosen = chain.slots.map(() => -1);
  const fill = (slot: number): boolean => {
    if (slot === chain.slots.length) return true;
    for (let at = 0; at < (chain.slots[slot]?.candidates.length ?? 0); at += 1) {
      if (!alive[slot]?.[at]) continue;
      chosen[slot] = at;
      const holds = chain.links.every(
        ({ first, second, pairs }) =>
          Math.max(first, second) !== slot ||
          pairs.some(([a, b]) => a === chosen[first] && b === chosen[second]),
      );
      if (holds && fill(slot + 1)) return true;
    }
    return false;
  };
  fill(0);
  return [...new Set(chosen.map((at, slot) => chain.slots[slot]?.candidates[at] ?? NOTHING))].filter(
    (item) => item !== NOTHING,
  );
}

/** How many more needs like this one the pieces at hand could meet beside all others. */
export function pieceSpare(problem: CoverProblem, at: number, atHand: AtHand): number {
  const alike = problem.pieces[at] as CoverProblem['pieces'][number];
  const matched = matchPieces(problem, atHand).matched;
  for (let more = 1; more <= MOST_SPARE; more += 1) {
    const pieces = [...problem.pieces, ...Array.from({ length: more }, () => alike)];
    if (matchPieces({ ...problem, pieces }, atHand).matched < matched + more) return more - 1;
  }
  return MOST_SPARE;
}

/** The pieces asked for that go without, the earlier ones served first. */
export function unmetPieces(problem: CoverProblem, atHand: AtHand): number[] {
  const without: number[] = [];
  const kept: CoverProblem['pieces'] = [];
  problem.pieces.forEach((piece, at) => {
    kept.push(piece);
    if (matchPieces({ ...problem, pieces: kept }, atHand).matched === kept.length) return;
    kept.pop();
    without.push(at);
  });
  return without;
}
