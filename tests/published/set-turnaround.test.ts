import { describe, expect, it } from 'vitest';
import { highsSolver } from '@/app/_server/solver/highs';
import { largestOverlap } from '@/lib/turnaround/overlap';
import type { TurnaroundProblem } from '@/lib/turnaround/problem';
import { solveTurnaround } from '@/lib/turnaround/solve';
import { turnTime } from '@/lib/turnaround/turnTime';

const HOUR = 3_600_000;
const options = { solver: highsSolver, timeLimitMs: 10_000 };

/**
 * Kleinberg & Tardos, Algorithm Design (2005), 4.1, interval partitioning: ten lectures of which three overlap at the most,
 * so that three rooms are enough. From memory, as on the slides to the book.
 */
describe('interval partitioning', () => {
  const lectures = {
    a: [9, 10.5],
    b: [9, 12.5],
    c: [9, 10.5],
    d: [11, 12.5],
    e: [11, 14],
    f: [13, 14.5],
    g: [13, 14.5],
    h: [14, 16.5],
    i: [15, 16.5],
    j: [15, 16.5],
  } as Record<string, [number, number]>;
  const stretches = Object.values(lectures).map(([from, to]) => ({ fromMs: from * HOUR, toMs: to * HOUR }));
  /** As cases: nobody waits for a set to come back. */
  const listOf = (rooms: number): TurnaroundProblem => ({
    cases: stretches.map(({ fromMs, toMs }) => ({
      needMs: fromMs,
      startMs: fromMs,
      endMs: toMs,
      rank: 3,
      theatre: null,
      ways: [{ parts: [Array.from({ length: rooms }, (_, set) => set)], pouches: [], penalty: 0 }],
    })),
    sets: Array.from({ length: rooms }, () => ({ readyMs: { p50: 0, p90: 0 }, turnMs: { p50: 0, p90: 0 } })),
    pouches: [],
    promises: [],
    rule: { planBy: 'p90', wantedMarginMs: 0 },
  });

  it('the depth is three', () => {
    expect(largestOverlap(stretches)).toMatchObject({
      most: 3,
      where: { fromMs: 9 * HOUR, toMs: 10.5 * HOUR },
    });
  });

  it('three sets serve all ten, two do not', async () => {
    expect((await solveTurnaround(listOf(3), options)).plan).not.toContain(null);
    const two = await solveTurnaround(listOf(2), options);
    expect(two.plan).toContain(null);
    expect(two.proof.kind).toBe('optimal');
  });

  /**
   * With one set it is interval scheduling (same book, 4.1): the one that ends first, then the next that fits. By hand: a,
   * d, f and i, or others as many.
   */
  it('one set serves four', async () => {
    const { plan } = await solveTurnaround(listOf(1), options);
    expect(plan.filter((service) => service !== null)).toHaveLength(4);
  });
});

/**
 * Winston, Operations Research (4th ed.), 7.5, the Machineco assignment problem: set-up times of four machines for four
 * jobs, least total 15. From memory; recomputed by hand over all 24 assignments.
 */
it('the least costly assignment of four machines to four jobs is 15', async () => {
  const hours = [
    [14, 5, 8, 7],
    [2, 12, 6, 5],
    [7, 8, 3, 9],
    [2, 4, 6, 10],
  ];
  const { plan, aims } = await solveTurnaround(
    {
      cases: [0, 1, 2, 3].map((job) => ({
        needMs: 0,
        startMs: 0,
        endMs: HOUR,
        rank: 3,
        theatre: null,
        ways: hours.map((row, machine) => ({
          parts: [[machine]],
          pouches: [],
          penalty: row[job] as number,
        })),
      })),
      sets: hours.map(() => ({ readyMs: { p50: 0, p90: 0 }, turnMs: { p50: 0, p90: 0 } })),
      pouches: [],
      promises: [],
      rule: { planBy: 'p90', wantedMarginMs: 0 },
    },
    options,
  );
  expect(aims[7]).toBe(15);
  expect(plan.map((service) => service?.sets[0])).toEqual([3, 0, 2, 1]);
});

/**
 * Sums of independent normal times: means and variances add (any textbook of probability). With z = 1.2816 for nine in ten,
 * stages of 60 ± 10, 90 ± 20 and 45 ± 20 give 195 ± 30: half of the time 195, nine times in ten 195 + 1.2816 × 30 = 233.4.
 */
it('the ninth decile of a sum of normal times is that of the sum', () => {
  const z = 1.281_551_565_5;
  const stages = [
    [60, 10],
    [90, 20],
    [45, 20],
  ].map(([mean, deviation]) => ({ p50: mean as number, p90: (mean as number) + z * (deviation as number) }));
  expect(turnTime(stages, 'independently')).toEqual({ p50: 195, p90: 234 });
  // all long together: 195 + 1.2816 × 50 = 259.1
  expect(turnTime(stages, 'together')).toEqual({ p50: 195, p90: 260 });
});
