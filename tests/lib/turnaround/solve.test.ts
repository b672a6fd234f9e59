import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { highsSolver } from '@/app/_server/solver/highs';
import type { Solver } from '@/lib/kits/solver';
import { aimsOf, compareAims } from '@/lib/turnaround/plan';
import type { TurnaroundProblem } from '@/lib/turnaround/problem';
import { earliestFree } from '@/lib/turnaround/rulesOfThumb';
import { solveTurnaround } from '@/lib/turnaround/solve';
import { solveDemand } from '@/lib/turnaround/solveGroup';
import { theatreList } from '../../fixtures/theatreLists';
import { costOf, faultsOf, isLess, leastCost } from './byTrying';
import { smallList } from './smallLists';

// properties look at thousands of lists
vi.setConfig({ testTimeout: 300_000 });

const options = { solver: highsSolver, timeLimitMs: 60_000 };
const solve = (problem: TurnaroundProblem) => solveTurnaround(problem, options);
const everyCase = (problem: TurnaroundProblem) => problem.cases.map((_, one) => one);
/** Fixed promises not kept, and cases unserved by urgency. */
const firstAims = (aims: readonly number[]) => aims.slice(0, 5);

describe('the plan', () => {
  it('is the best that looking at every plan finds, on every aim', async () => {
    await fc.assert(
      fc.asyncProperty(smallList, async (problem) => {
        const solved = await solve(problem);
        expect(faultsOf(problem, solved.plan)).toEqual([]);
        expect(costOf(problem, solved.plan)).toEqual(leastCost(problem));
        expect(solved.aims).toEqual(costOf(problem, solved.plan));
        expect(solved.proof).toEqual({ kind: 'optimal' });
      }),
      { numRuns: 2_000 },
    );
  });

  it('in which a case must be served, or served in one way, or without one set, is the best of those too', async () => {
    const asked = fc.tuple(smallList, fc.nat(), fc.option(fc.nat()), fc.option(fc.nat()));
    await fc.assert(
      fc.asyncProperty(asked, async ([problem, someCase, someWay, someSet]) => {
        const one = someCase % problem.cases.length;
        const way = someWay === null ? null : someWay % (problem.cases[one]?.ways.length ?? 1);
        const without = someSet === null ? null : someSet % problem.sets.length;
        const solved = await solveDemand(problem, everyCase(problem), { case: one, way, without }, options);
        const least = leastCost(problem, (plan) => {
          const service = plan[one];
          if (!service || (way !== null && service.way !== way)) return false;
          return without === null || !service.sets.includes(without);
        });
        expect(solved && costOf(problem, solved.plan)).toEqual(least);
        if (solved) expect(faultsOf(problem, solved.plan)).toEqual([]);
      }),
      { numRuns: 600 },
    );
  });

  it('does not change when the whole list is shifted', async () => {
    const shift = fc.integer({ min: -10_000, max: 10_000 }).map((minutes) => minutes * 60_000);
    await fc.assert(
      fc.asyncProperty(smallList, shift, async (problem, byMs) => {
        const shifted: TurnaroundProblem = {
          ...problem,
          cases: problem.cases.map((one) => ({
            ...one,
            needMs: one.needMs + byMs,
            startMs: one.startMs + byMs,
            endMs: one.endMs + byMs,
          })),
          sets: problem.sets.map((set) => ({
            ...set,
            readyMs: set.readyMs && { p50: set.readyMs.p50 + byMs, p90: set.readyMs.p90 + byMs },
          })),
        };
        expect((await solve(shifted)).plan).toEqual((await solve(problem)).plan);
      }),
      { numRuns: 200 },
    );
  });

  it('with one more set never leaves more urgent cases unserved', async () => {
    await fc.assert(
      fc.asyncProperty(smallList, fc.nat(), async (problem, which) => {
        const like = which % problem.sets.length;
        const added = problem.sets.length;
        const more: TurnaroundProblem = {
          ...problem,
          sets: [...problem.sets, problem.sets[like] as TurnaroundProblem['sets'][number]],
          cases: problem.cases.map((one) => ({
            ...one,
            ways: one.ways.map((way) => ({
              ...way,
              parts: way.parts.map((part) => (part.includes(like) ? [...part, added] : part)),
            })),
          })),
        };
        const [fewer, now] = [await solve(problem), await solve(more)];
        expect(compareAims(firstAims(now.aims), firstAims(fewer.aims))).toBeLessThanOrEqual(0);
      }),
      { numRuns: 200 },
    );
  });

  it('keeps what need not move: planned again with its own promises, every set stays where it was', async () => {
    await fc.assert(
      fc.asyncProperty(smallList, async (problem) => {
        const { plan } = await solve({ ...problem, promises: [] });
        const promises = plan.flatMap((service, one) =>
          (service?.sets ?? []).map((set) => ({ case: one, set, moveCost: 1, fixed: false })),
        );
        const again = await solve({ ...problem, promises });
        expect(again.aims).toEqual((await solve({ ...problem, promises: [] })).aims);
        plan.forEach((service, one) => {
          expect(again.plan[one]?.sets ?? []).toEqual(expect.arrayContaining([...(service?.sets ?? [])]));
        });
      }),
      { numRuns: 200 },
    );
  });

  it('serves on the first aims never less than taking what has been free longest', async () => {
    await fc.assert(
      fc.asyncProperty(smallList, async (problem) => {
        const free: TurnaroundProblem = { ...problem, promises: [] };
        const thumb = earliestFree(free, everyCase(free));
        expect(faultsOf(free, thumb)).toEqual([]);
        const { aims } = await solve(free);
        expect(isLess(firstAims(costOf(free, thumb)), firstAims(aims))).toBe(false);
      }),
      { numRuns: 300 },
    );
  });
});

describe('a set', () => {
  const HOUR = 3_600_000;
  const two = (gapMs: number): TurnaroundProblem => ({
    cases: [0, 5 * HOUR + gapMs].map((needMs) => ({
      needMs,
      startMs: needMs + HOUR,
      endMs: needMs + 2 * HOUR,
      rank: 3,
      theatre: null,
      ways: [{ parts: [[0]], pouches: [], penalty: 0 }],
    })),
    sets: [{ readyMs: { p50: 0, p90: 0 }, turnMs: { p50: 3 * HOUR, p90: 3 * HOUR } }],
    pouches: [],
    promises: [],
    rule: { planBy: 'p90', wantedMarginMs: 0 },
  });

  it('that is back at the very instant it is needed serves; a millisecond later it does not', async () => {
    expect((await solve(two(0))).plan).not.toContain(null);
    expect((await solve(two(-1))).plan).toContain(null);
  });
});

/** A day that no rule of thumb settles. */
const DAY = theatreList(1, { days: 1, cases: 40, kinds: 8, copies: 5, theatres: 6 });

describe('when the solver does not finish', () => {
  const known = async () => (await solveTurnaround(DAY, { ...options, solver: null })).aims;

  it('without one, the best rule of thumb is the answer, and nothing is claimed to be proven', async () => {
    const { plan, aims, proof } = await solveTurnaround(DAY, { ...options, solver: null });
    expect(faultsOf(DAY, plan)).toEqual([]);
    expect(
      compareAims(aims, aimsOf(DAY, earliestFree(DAY, everyCase(DAY)), everyCase(DAY))),
    ).toBeLessThanOrEqual(0);
    expect(proof.kind).toBe('gap');
  });

  it.each([
    { why: 'finds nothing', solver: (async () => ({ status: 'nothingFound' })) as Solver },
    {
      why: 'ends with what it was given, and a bound',
      solver: (async (programme) => {
        const values = (programme.startFrom ?? []).map((value) => value ?? 0);
        const objective = programme.objective.reduce((sum, cost, at) => sum + cost * (values[at] ?? 0), 0);
        return { status: 'timeLimit', values, objective, gap: 0.2 };
      }) as Solver,
    },
  ])('one that $why leaves the best known, and a bound that holds', async ({ solver }) => {
    const { aims, proof } = await solveTurnaround(DAY, { ...options, solver });
    expect(aims).toEqual(await known());
    const best = await solve(DAY);
    if (proof.kind !== 'gap') throw new Error('nothing was proven');
    expect(compareAims(proof.atLeast, best.aims)).toBeLessThanOrEqual(0);
    expect(best.proof.kind).toBe('optimal');
  });
});

it('says how far it is, and ends when told to', async () => {
  const done: number[] = [];
  await solveTurnaround(DAY, { ...options, onProgress: ({ casesDone }) => done.push(casesDone) });
  expect(done).toEqual(done.toSorted((a, b) => a - b));
  expect(done.at(-1)).toBe(DAY.cases.length);

  const stop = new AbortController();
  let asked = 0;
  const solver: Solver = (programme, limits) => {
    asked += 1;
    return highsSolver(programme, limits);
  };
  stop.abort(new Error('told to'));
  await expect(solveTurnaround(DAY, { ...options, solver, signal: stop.signal })).rejects.toThrow('told to');
  expect(asked).toBe(0);
});
