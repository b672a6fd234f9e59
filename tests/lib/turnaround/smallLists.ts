import fc from 'fast-check';
import type { TurnaroundProblem } from '@/lib/turnaround/problem';

/** Times as in a list of an hour's steps: ends and beginnings often fall on the same instant. */
const HOUR = 3_600_000;

const spread = (least: number, most: number) =>
  fc
    .tuple(fc.integer({ min: least, max: most }), fc.integer({ min: 0, max: 3 }))
    .map(([p50, more]) => ({ p50: p50 * HOUR, p90: (p50 + more) * HOUR }));

const subsetOf = (count: number) =>
  fc.subarray(
    Array.from({ length: count }, (_, at) => at),
    { minLength: count === 0 ? 0 : 1 },
  );

const wayOf = (sets: number, pouches: number) =>
  fc.record({
    parts: fc.oneof(
      { weight: 4, arbitrary: fc.tuple(subsetOf(sets)) },
      { weight: 1, arbitrary: fc.tuple(subsetOf(sets), subsetOf(sets)) },
    ),
    pouches: fc.oneof(
      { weight: 3, arbitrary: fc.constant<number[]>([]) },
      { weight: 1, arbitrary: fc.subarray(Array.from({ length: pouches }, (_, at) => at)) },
    ),
    penalty: fc.integer({ min: 0, max: 2 }),
  });

/** Small lists of every kind: copies alike and not, several parts, scarce pouches, promises that clash, unknown times. */
export const smallList: fc.Arbitrary<TurnaroundProblem> = fc
  .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 0, max: 2 }), fc.integer({ min: 1, max: 5 }))
  .chain(([setCount, pouchCount, caseCount]) => {
    const case_ = fc
      .record({
        needHours: fc.integer({ min: 0, max: 14 }),
        leadHours: fc.integer({ min: 0, max: 1 }),
        hours: fc.integer({ min: 1, max: 3 }),
        rank: fc.integer({ min: 0, max: 3 }),
        ways: fc.array(wayOf(setCount, pouchCount), { minLength: 1, maxLength: 2 }),
      })
      .map(({ needHours, leadHours, hours, rank, ways }) => ({
        needMs: needHours * HOUR,
        startMs: (needHours + leadHours) * HOUR,
        endMs: (needHours + leadHours + hours) * HOUR,
        rank,
        theatre: null,
        ways,
      }));
    const promise = fc.record({
      case: fc.integer({ min: 0, max: caseCount - 1 }),
      set: fc.integer({ min: 0, max: setCount - 1 }),
      moveCost: fc.integer({ min: 0, max: 3 }),
      fixed: fc.oneof({ weight: 4, arbitrary: fc.constant(false) }, { weight: 1, arbitrary: fc.boolean() }),
    });
    // copies are often alike: few kinds of turn
    const turn = fc.oneof(fc.constant({ p50: 3 * HOUR, p90: 4 * HOUR }), spread(1, 5));
    return fc.record({
      cases: fc.array(case_, { minLength: caseCount, maxLength: caseCount }),
      sets: fc.array(fc.record({ readyMs: fc.option(spread(-2, 8), { freq: 6 }), turnMs: turn }), {
        minLength: setCount,
        maxLength: setCount,
      }),
      pouches: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: pouchCount, maxLength: pouchCount }),
      promises: fc.uniqueArray(promise, {
        maxLength: 3,
        selector: ({ case: one, set }) => `${one}/${set}`,
      }),
      rule: fc.record({
        planBy: fc.constantFrom('p50' as const, 'p90' as const),
        wantedMarginMs: fc.constantFrom(0, HOUR, 2 * HOUR + 1),
      }),
    });
  });
