import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fewOfEach } from '@/lib/kits/cover/fewOfEach';
import type { CoverProblem, CoverSet, SetCost } from '@/lib/kits/cover/problem';
import { reachable } from '@/lib/kits/cover/search';
import { servingWays } from '@/lib/kits/cover/servingWays';
import { compareSetCosts, upToUse } from '@/lib/kits/cover/types';
import { smallProblem } from './coverProblems';

const cost: fc.Arbitrary<SetCost> = fc.record({
  promises: fc.constant(1),
  useByDays: fc.constant(3_650),
  massGrams: fc.integer({ min: 1, max: 3 }),
  metres: fc.integer({ min: 0, max: 2 }),
});

/** A house with several copies of each set, of different costs, in any order; copies share what they hold or do not. */
const house = fc
  .tuple(smallProblem, fc.integer({ min: 1, max: 4 }), fc.boolean())
  .chain(([problem, copies, shared]) => {
    const sets = problem.sets.flatMap(({ holds }) =>
      Array.from({ length: copies }, () => (shared ? holds : new Map(holds))),
    );
    return fc
      .tuple(
        fc.shuffledSubarray(sets, { minLength: sets.length }),
        fc.array(cost, { minLength: sets.length, maxLength: sets.length }),
      )
      .map(([held, costs]) =>
        upToUse({
          ...problem,
          sets: held.map((holds, at): CoverSet => ({ holds, cost: costs[at] as SetCost })),
        }),
      );
  });

function fewOf(problem: CoverProblem) {
  const costOf = (set: number) => (problem.sets[set] as CoverSet).cost;
  const order = problem.sets.map((_, set) => set);
  order.sort((a, b) => compareSetCosts(costOf(a), costOf(b)) || a - b);
  const rank = problem.sets.map((_, set) => order.indexOf(set));
  const alike = new Map<CoverSet['holds'], { holds: CoverSet['holds']; members: number[] }>();
  problem.sets.forEach(({ holds }, set) => {
    const same = alike.get(holds) ?? { holds, members: [] };
    alike.set(holds, same);
    same.members.push(set);
  });
  const few = fewOfEach(problem, [...alike.values()], rank);
  const sets = few.sets.map((set, at) => ({
    holds: few.holds[at] as Map<number, number>,
    cost: costOf(set),
  }));
  return { few, problem: { ...problem, sets } };
}

it('the ways among a few sets of each kind are those among all, in the same order, down to the copies', () => {
  fc.assert(
    fc.property(house, fc.nat(), (problem, least) => {
      const { few, problem: small } = fewOf(problem);
      // all chains, and some of them alone: sets that differ in a back-up are then alike
      for (const keep of [0, least % (problem.chains.length + 1)]) {
        const chains = problem.chains.slice(keep);
        const [whole, less] = [
          { ...problem, chains },
          { ...small, chains },
        ];
        expect(reachable(less)).toEqual(reachable(whole));
        const { ways, all } = servingWays(less, reachable(less));
        const named = ways.map(({ parts, packs }) => ({
          parts: parts.map((part) => few.copiesOf(part)),
          packs,
        }));
        const expected = servingWays(whole, reachable(whole));
        expect(named).toEqual(expected.ways);
        expect(all).toBe(expected.all);
      }
    }),
    { numRuns: 500 },
  );
});

it('are few: of a kind no more than a kit could use, and one', () => {
  fc.assert(
    fc.property(house, (problem) => {
      const { few } = fewOf(problem);
      const wanted =
        problem.pieces.length +
        problem.chains.reduce((sum, { slots }) => sum + slots.reduce((most, one) => most + one.pieces, 0), 0);
      const kinds = new Set(few.holds.map((holds) => JSON.stringify([...holds])));
      expect(few.sets.length).toBeLessThanOrEqual(kinds.size * (wanted + 1));
    }),
  );
});

it('stopping early gives the first of the ways', () => {
  fc.assert(
    fc.property(house, fc.integer({ min: 1, max: 3 }), (problem, enough) => {
      const reach = reachable(problem);
      const { ways } = servingWays(problem, reach);
      const some = servingWays(problem, reach, enough);
      expect(some.ways).toEqual(ways.slice(0, some.ways.length));
      const opening = (of: typeof ways) => of.filter(({ parts }) => parts.length > 0).length;
      expect(opening(some.ways)).toBe(Math.min(enough, opening(ways)));
      if (!some.all) expect(opening(some.ways)).toBe(enough);
    }),
    { numRuns: 300 },
  );
});
