import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { highsSolver } from '@/app/_server/solver/highs';
import { Bookings } from '@/lib/turnaround/bookings';
import { obstaclesOf } from '@/lib/turnaround/obstacles';
import { largestOverlap } from '@/lib/turnaround/overlap';
import type { PlannedCase, TurnaroundProblem } from '@/lib/turnaround/problem';
import { type Repair, repairsFor } from '@/lib/turnaround/repairs';
import { leastSlip, slipsInOrder } from '@/lib/turnaround/slips';
import { solveTurnaround } from '@/lib/turnaround/solve';
import { costOf, faultsOf, leastCost, type Tried } from './byTrying';
import { smallList } from './smallLists';

vi.setConfig({ testTimeout: 300_000 });

const options = { solver: highsSolver, timeLimitMs: 60_000 };
const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** A list with its plan, and the cases that go without. */
async function planned(problem: TurnaroundProblem) {
  const { plan } = await solveTurnaround(problem, options);
  return { plan, without: plan.flatMap((service, one) => (service ? [] : [one])) };
}

/** The list with one case begun later. */
function slipped(problem: TurnaroundProblem, one: number, byMs: number): TurnaroundProblem {
  const later = (planned: PlannedCase) => ({
    ...planned,
    needMs: planned.needMs + byMs,
    startMs: planned.startMs + byMs,
    endMs: planned.endMs + byMs,
  });
  return { ...problem, cases: problem.cases.map((planned, at) => (at === one ? later(planned) : planned)) };
}

/** Every way to serve the one case beside a plan that stays. */
function servesBeside(problem: TurnaroundProblem, plan: readonly Tried[], one: number): boolean {
  const choices = (problem.cases[one] as PlannedCase).ways.flatMap(({ parts }, way) =>
    parts
      .reduce<number[][]>(
        (chosen, part) =>
          chosen.flatMap((sets) => part.filter((set) => !sets.includes(set)).map((set) => [...sets, set])),
        [[]],
      )
      .map((sets) => ({ way, sets })),
  );
  return choices.some(
    (choice) =>
      faultsOf(
        problem,
        plan.map((service, at) => (at === one ? choice : service)),
      ).length === 0,
  );
}

describe('the least slip', () => {
  it('serves the case with all else as planned, and an hour less never does', async () => {
    await fc.assert(
      fc.asyncProperty(smallList, async (problem) => {
        const { plan, without } = await planned(problem);
        for (const one of without) {
          const slip = leastSlip(problem, one, new Bookings(problem, plan));
          // all times of these lists are whole hours
          const tried = Array.from({ length: 60 }, (_, hours) => hours).find((hours) =>
            servesBeside(slipped(problem, one, hours * HOUR), plan, one),
          );
          expect(slip && slip.slipMs / HOUR).toBe(tried ?? null);
          if (!slip) continue;
          const moved = slipped(problem, one, slip.slipMs);
          expect(
            faultsOf(
              moved,
              plan.map((service, at) => (at === one ? slip.service : service)),
            ),
          ).toEqual([]);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('of all in order holds together: every case slipped as said, no set is in two places', () => {
    fc.assert(
      fc.property(smallList, (problem) => {
        const slips = slipsInOrder(problem);
        const moved = slips.reduce(
          (list, slip, one) => (slip ? slipped(list, one, slip.slipMs) : list),
          problem,
        );
        expect(
          faultsOf(
            moved,
            slips.map((slip) => slip?.service ?? null),
          ),
        ).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });
});

describe('an obstacle', () => {
  it('is true of the set it is named for', async () => {
    await fc.assert(
      fc.asyncProperty(smallList, async (problem) => {
        const { plan, without } = await planned(problem);
        const by = problem.rule.planBy;
        for (const one of without) {
          const { needMs, endMs, ways } = problem.cases[one] as PlannedCase;
          for (const way of ways.keys()) {
            const told = obstaclesOf(problem, one, way, new Bookings(problem, plan));
            // with all sets free, it is that two parts ask for the same one
            expect(told.length).toBe(ways[way]?.parts.flat().length);
            if (told.every(({ obstacle }) => obstacle.kind === 'onlyThis'))
              expect(new Set(told.map(({ set }) => set)).size).toBeLessThan(ways[way]?.parts.length ?? 0);
            for (const { set, obstacle } of told) {
              const { readyMs, turnMs } = problem.sets[set] as TurnaroundProblem['sets'][number];
              const backMs = (other: number) => (problem.cases[other]?.endMs ?? 0) + turnMs[by];
              switch (obstacle.kind) {
                case 'readyUnknown':
                  expect(readyMs).toBeNull();
                  break;
                case 'notReady':
                  expect(obstacle.readyMs).toBe(readyMs?.[by]);
                  expect(obstacle.readyMs).toBeGreaterThan(needMs);
                  break;
                case 'inUse':
                  expect(plan[obstacle.by]?.sets).toContain(set);
                  expect(obstacle.untilMs).toBe(backMs(obstacle.by));
                  expect(obstacle.untilMs).toBeGreaterThan(needMs);
                  break;
                case 'neededNext':
                  expect(plan[obstacle.by]?.sets).toContain(set);
                  expect(obstacle.fromMs).toBe(problem.cases[obstacle.by]?.needMs);
                  expect(endMs + turnMs[by]).toBeGreaterThan(obstacle.fromMs);
                  break;
                case 'noPouch':
                  expect(
                    plan.filter((service, at) =>
                      problem.cases[at]?.ways[service?.way ?? -1]?.pouches.includes(obstacle.pouch),
                    ).length,
                  ).toBe(problem.pouches[obstacle.pouch]);
                  break;
                case 'onlyThis':
                  expect(readyMs?.[by]).toBeLessThanOrEqual(needMs);
              }
            }
          }
        }
      }),
      { numRuns: 400 },
    );
  });
});

describe('a repair', () => {
  /** What the list is once the repair is done. */
  function repaired(problem: TurnaroundProblem, one: number, repair: Repair): TurnaroundProblem {
    switch (repair.kind) {
      case 'otherSets':
      case 'oneMore':
        return problem;
      case 'laterSlot':
        return slipped(problem, one, repair.slipMs);
      case 'changeOrder': {
        const byMs = (at: number, startMs: number) => startMs - (problem.cases[at]?.startMs ?? 0);
        return slipped(
          slipped(problem, one, byMs(one, repair.startMs)),
          repair.with,
          byMs(repair.with, repair.otherStartMs),
        );
      }
      case 'quickerTurn':
        throw new Error('looked at by itself');
    }
  }
  const theatres = smallList.map((problem) => ({
    ...problem,
    cases: problem.cases.map((one) => ({ ...one, theatre: 'one' })),
  }));

  it('does what it says, and takes no less from others than it must', async () => {
    let seen: Record<string, number> = {};
    await fc.assert(
      fc.asyncProperty(theatres, async (problem) => {
        const { plan, without } = await planned(problem);
        const before = costOf(problem, plan);
        for (const one of without) {
          const repairs = await repairsFor(problem, plan, one, options);
          for (const repair of repairs) {
            seen = { ...seen, [repair.kind]: (seen[repair.kind] ?? 0) + 1 };
            if (repair.kind === 'quickerTurn') {
              expect(holdsHastened(problem, plan, one, repair)).toBe(true);
              continue;
            }
            if (repair.kind === 'oneMore') {
              const way = problem.cases[one]?.ways[repair.way];
              expect(repair.parts.length).toBeGreaterThan(0);
              expect(repair.parts.every((part) => way?.parts[part])).toBe(true);
              continue;
            }
            const done = repaired(problem, one, repair);
            const least = leastCost(done, (other) =>
              repair.kind === 'laterSlot'
                ? other.every((service, at) => at === one || sameService(service, plan[at]))
                : other[one] != null && other[one]?.way === repair.service.way,
            );
            expect(least).not.toBeNull();
            const unserved = (cost: readonly number[]) => cost.slice(1, 5).reduce((a, b) => a + b, 0);
            // besides the case itself, as many lose their sets as the count of the unserved says
            if (repair.kind === 'otherSets')
              expect(unserved(least as number[]) - (unserved(before) - 1)).toBeLessThanOrEqual(
                repair.cost.unserved.length,
              );
          }
        }
      }),
      { numRuns: 300 },
    );
    // every kind was tried
    expect(Object.keys(seen).sort()).toEqual([
      'changeOrder',
      'laterSlot',
      'oneMore',
      'otherSets',
      'quickerTurn',
    ]);
  });
});

const sameService = (a: Tried | undefined, b: Tried | undefined) =>
  a?.way === b?.way && a?.sets.join() === b?.sets.join();

/** Whether the case is served beside the plan once that one turn is quicker, and by a minute less is not. */
function holdsHastened(
  problem: TurnaroundProblem,
  plan: readonly Tried[],
  one: number,
  { set, after, byMs, service }: Extract<Repair, { kind: 'quickerTurn' }>,
): boolean {
  const by = problem.rule.planBy;
  const holds = (hastenedMs: number) => {
    const { readyMs, turnMs } = problem.sets[set] as TurnaroundProblem['sets'][number];
    const ready = (readyMs?.[by] ?? Number.POSITIVE_INFINITY) - (after === null ? hastenedMs : 0);
    const users = plan
      .flatMap((service_, at) => (service_?.sets.includes(set) || at === one ? [at] : []))
      .map((at) => ({
        from: problem.cases[at]?.needMs ?? 0,
        to: (problem.cases[at]?.endMs ?? 0) + turnMs[by] - (at === after ? hastenedMs : 0),
      }));
    return (
      users.every(({ from }) => from >= ready) &&
      users.every((a, at) => users.slice(at + 1).every((b) => a.to <= b.from || b.to <= a.from))
    );
  };
  return service.sets.includes(set) && holds(byMs) && !holds(byMs - 1);
}

describe('copies needed', () => {
  const stretch = fc
    .tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 6 }))
    .map(([fromMs, length]) => ({ fromMs, toMs: fromMs + length }));
  const stretches = fc.array(stretch, { maxLength: 9 });

  // the theorem (Kleinberg & Tardos, 4.1): each in the order of its beginning takes a copy that is free
  it('are as many as giving them out one by one takes, and as overlap at some instant', () => {
    fc.assert(
      fc.property(stretches, (list) => {
        const { most, where, which } = largestOverlap(list);
        const freeFrom: number[] = [];
        for (const { fromMs, toMs } of list
          .filter((one) => one.fromMs < one.toMs)
          .sort((a, b) => a.fromMs - b.fromMs)) {
          const copy = freeFrom.findIndex((at) => at <= fromMs);
          if (copy === -1) freeFrom.push(toMs);
          else freeFrom[copy] = toMs;
        }
        expect(most).toBe(freeFrom.length);
        const atOnce = Array.from(
          { length: 30 },
          (_, at) => list.filter(({ fromMs, toMs }) => fromMs <= at && at < toMs).length,
        );
        expect(most).toBe(Math.max(0, ...atOnce));
        expect(which.length).toBe(most);
        if (where) expect(atOnce.indexOf(most)).toBe(where.fromMs);
        else expect(most).toBe(0);
      }),
      { numRuns: 2_000 },
    );
  });
});
