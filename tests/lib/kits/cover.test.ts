import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { highsSolver } from '@/app/_server/solver/highs';
import { isClosed, smallest, waysToClose } from '@/lib/kits/cover/closure';
import { greedySets } from '@/lib/kits/cover/greedy';
import { addPacks, addSet, atHandOf, nothingAtHand } from '@/lib/kits/cover/problem';
import { reachable } from '@/lib/kits/cover/search';
import { solveCover } from '@/lib/kits/cover/solve';
import { bestByTrying, closesByTrying, haves, smallProblem } from './coverProblems';

// properties look at hundreds of instances
vi.setConfig({ testTimeout: 60_000 });

const bySearch = { solver: null, timeLimitMs: 1_000 };
/** The search gives up at once, so that the integer programme has to do all of it. */
const byProgramme = {
  solver: highsSolver,
  timeLimitMs: 20_000,
  limits: { nodes: 0, choiceNodes: 0, choices: 0 },
};

describe('the fewest trays', () => {
  it('are those that looking at every choice finds, on every aim', async () => {
    await fc.assert(
      fc.asyncProperty(smallProblem, async (problem) => {
        const solved = await solveCover(problem, bySearch);
        expect([...solved.best.cost]).toEqual(bestByTrying(problem));
        expect(solved.proof).toEqual({ kind: 'optimal', by: 'search', furtherAims: 'proven' });
      }),
      { numRuns: 400 },
    );
  });

  it('come out the same from the integer programme', async () => {
    await fc.assert(
      fc.asyncProperty(smallProblem, async (problem) => {
        const solved = await solveCover(problem, byProgramme);
        expect([...solved.best.cost]).toEqual(bestByTrying(problem));
        expect(solved.proof).toEqual({ kind: 'optimal', by: 'programme', furtherAims: 'proven' });
      }),
      { numRuns: 40 },
    );
  }, 60_000);

  it('are never more than the rule of thumb opens', async () => {
    await fc.assert(
      fc.asyncProperty(smallProblem, async (problem) => {
        const solved = await solveCover(problem, bySearch);
        expect(solved.best.cost[0]).toBeLessThanOrEqual(greedySets(problem, solved.reach).length);
      }),
    );
  });

  it('give every piece once: what is given from sets and packs is there', async () => {
    await fc.assert(
      fc.asyncProperty(smallProblem, async (problem) => {
        const { best } = await solveCover(problem, bySearch);
        const given = new Map<number, number>();
        const fromPack = new Map<number, number>();
        for (const one of best.pieces.given) {
          if (!one) continue;
          given.set(one.item, (given.get(one.item) ?? 0) + 1);
          if (one.pack !== null) fromPack.set(one.pack, (fromPack.get(one.pack) ?? 0) + 1);
        }
        const atHand = atHandOf(problem, best);
        for (const [item, count] of given) expect(count).toBeLessThanOrEqual(atHand[item] ?? 0);
        for (const [pack, count] of fromPack) expect(count).toBeLessThanOrEqual(best.packs[pack] ?? 0);
        best.packs.forEach((count, pack) => {
          expect(count).toBeLessThanOrEqual(problem.packs[pack]?.quantity ?? 0);
        });
      }),
    );
  });

  it('leave no line short that something in store would meet', async () => {
    await fc.assert(
      fc.asyncProperty(smallProblem, async (problem) => {
        const { best } = await solveCover(problem, bySearch);
        const everything = haves(
          problem,
          problem.sets.map((_, at) => at),
          problem.packs.map(({ quantity }) => quantity),
        );
        const chosen = haves(problem, best.sets, best.packs);
        for (const chain of problem.chains) {
          expect(closesByTrying(chain, chosen)).toBe(closesByTrying(chain, everything));
        }
      }),
    );
  });
});

describe('a chain', () => {
  it('closes exactly when some way through it fits', () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const atHand = nothingAtHand(problem);
        for (const set of problem.sets.slice(0, 2)) addSet(atHand, set);
        for (const chain of problem.chains) {
          expect(isClosed(chain, atHand)).toBe(closesByTrying(chain, (item) => atHand[item] ?? 0));
        }
      }),
      { numRuns: 400 },
    );
  });

  it('keeps the way with one piece, not also the way with two of the same', () => {
    const ways = [new Map([[7, 2]]), new Map([[7, 1]])];
    expect(smallest(ways)).toEqual([new Map([[7, 1]])]);
  });

  it('is closed by each way that is named, and by nothing less', () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const atHand = nothingAtHand(problem);
        for (const set of problem.sets) addSet(atHand, set);
        const available = nothingAtHand(problem);
        addPacks(available, problem);
        for (const chain of problem.chains) {
          const ways = waysToClose(chain, atHand, available);
          const with_ = (way: Map<number, number>) => (item: number) =>
            (atHand[item] ?? 0) + (way.get(item) ?? 0);
          expect(ways.length > 0).toBe(
            closesByTrying(chain, (item) => (atHand[item] ?? 0) + (available[item] ?? 0)),
          );
          for (const way of ways) {
            expect(closesByTrying(chain, with_(way))).toBe(true);
            for (const [item, count] of way) {
              const less = new Map(way).set(item, count - 1);
              expect(closesByTrying(chain, with_(less))).toBe(false);
            }
          }
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('what can be met', () => {
  it('grows with the store', () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const less = { ...problem, sets: problem.sets.slice(1) };
        const [more, fewer] = [reachable(problem), reachable(less)];
        expect(more.chains).toEqual(expect.arrayContaining(fewer.chains));
        expect(more.pieces).toBeGreaterThanOrEqual(fewer.pieces);
      }),
    );
  });
});
