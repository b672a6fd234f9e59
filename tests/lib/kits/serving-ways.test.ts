import fc from 'fast-check';
import { expect, it } from 'vitest';
import { isClosed } from '@/lib/kits/cover/closure';
import { matchPieces } from '@/lib/kits/cover/pieces';
import { addSet, type CoverProblem, nothingAtHand } from '@/lib/kits/cover/problem';
import { reachable } from '@/lib/kits/cover/search';
import { type ServingWay, servingWays } from '@/lib/kits/cover/servingWays';
import { mostUseful, upToUse } from '@/lib/kits/cover/types';
import { smallProblem } from './coverProblems';

/** Whether these sets and packs meet all that can be met, looked at without the search. */
function meets(problem: CoverProblem, sets: readonly number[], packs: readonly number[] | 'all'): boolean {
  const reach = reachable(problem);
  const atHand = nothingAtHand(problem);
  for (const set of sets) addSet(atHand, problem.sets[set] as CoverProblem['sets'][number]);
  problem.packs.forEach(({ item, quantity }, at) => {
    const taken = packs === 'all' ? quantity : (packs[at] ?? 0);
    atHand[item] = (atHand[item] as number) + taken;
  });
  return (
    reach.chains.every((chain) =>
      isClosed(problem.chains[chain] as CoverProblem['chains'][number], atHand),
    ) && matchPieces(problem, atHand).matched >= reach.pieces
  );
}

/** Every choice of one set out of each part, no set twice. */
function choices([part, ...rest]: readonly number[][]): number[][] {
  if (!part) return [[]];
  return part.flatMap((set) =>
    choices(rest).flatMap((others) => (others.includes(set) ? [] : [[set, ...others]])),
  );
}

const within = ({ parts }: ServingWay, free: ReadonlySet<number>) =>
  choices(parts).some((choice) => choice.every((set) => free.has(set)));

it('every choice of every way meets all that can be met', () => {
  fc.assert(
    fc.property(smallProblem, (problem) => {
      const { ways } = servingWays(problem, reachable(problem));
      expect(ways.length).toBeGreaterThan(0);
      for (const way of ways)
        for (const choice of choices(way.parts)) expect(meets(problem, choice, way.packs)).toBe(true);
    }),
    { numRuns: 400 },
  );
});

it('whatever sets are free: where they do, one of the ways uses only them', () => {
  fc.assert(
    fc.property(smallProblem, (problem) => {
      const { ways, all } = servingWays(problem, reachable(problem));
      expect(all).toBe(true);
      for (let mask = 0; mask < 1 << problem.sets.length; mask += 1) {
        const free = problem.sets.flatMap((_, set) => (mask & (1 << set) ? [set] : []));
        expect(ways.some((way) => within(way, new Set(free)))).toBe(meets(problem, free, 'all'));
      }
    }),
    { numRuns: 400 },
  );
});

it('what is beyond any use changes no way', () => {
  fc.assert(
    fc.property(smallProblem, (problem) => {
      const useful = upToUse(problem);
      expect(reachable(useful)).toEqual(reachable(problem));
      expect(servingWays(useful, reachable(useful))).toEqual(servingWays(problem, reachable(problem)));
      // ten pieces more of whatever is there in plenty is the same problem
      const most = mostUseful(problem);
      const more = {
        ...problem,
        sets: problem.sets.map((set) => ({
          ...set,
          holds: new Map([...set.holds].map(([item, n]) => [item, n >= (most.get(item) ?? 0) ? n + 10 : n])),
        })),
      };
      expect(upToUse(more)).toEqual(useful);
    }),
    { numRuns: 400 },
  );
});
