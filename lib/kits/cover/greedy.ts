import { closedBy, isClosed } from './closure';
import { matchPieces } from './pieces';
import { type AtHand, addPacks, addSet, type CoverProblem, nothingAtHand } from './problem';
import type { Reachable } from './search';

/**
 * Trays by the rule of thumb "the one that helps most next", then without those that turned out superfluous. An upper
 * bound and a start for the exact methods; on its own it can be wrong by half.
 */
export function greedySets(problem: CoverProblem, reach: Reachable): number[] {
  const atHand = nothingAtHand(problem);
  addPacks(atHand, problem);
  const taken = new Set<number>();
  while (!allMet(problem, reach, atHand)) {
    let best = -1;
    let most = -1;
    problem.sets.forEach((set, number) => {
      if (taken.has(number)) return;
      addSet(atHand, set);
      const score = progress(problem, reach, atHand);
      addSet(atHand, set, -1);
      if (score <= most) return;
      most = score;
      best = number;
    });
    if (best === -1) break;
    taken.add(best);
    addSet(atHand, problem.sets[best] as CoverProblem['sets'][number]);
  }
  for (const number of [...taken]) {
    const set = problem.sets[number] as CoverProblem['sets'][number];
    addSet(atHand, set, -1);
    if (allMet(problem, reach, atHand)) taken.delete(number);
    else addSet(atHand, set);
  }
  return [...taken].sort((a, b) => a - b);
}

/** Whether everything that can be met is met. */
export function allMet(problem: CoverProblem, reach: Reachable, atHand: AtHand): boolean {
  return (
    reach.chains.every((chain) =>
      isClosed(problem.chains[chain] as CoverProblem['chains'][number], atHand),
    ) && matchPieces(problem, atHand).matched >= reach.pieces
  );
}

/** Lines met count most; slots that have any candidate at hand count a little, so that half a chain is progress. */
function progress(problem: CoverProblem, reach: Reachable, atHand: AtHand): number {
  let score = matchPieces(problem, atHand).matched * 100;
  for (const number of reach.chains) {
    const chain = problem.chains[number] as CoverProblem['chains'][number];
    if (closedBy(chain, atHand)) score += 100;
    else {
      for (const { candidates, pieces } of chain.slots) {
        if (candidates.some((item) => item < 0 || (atHand[item] ?? 0) >= pieces)) score += 1;
      }
    }
  }
  return score;
}
