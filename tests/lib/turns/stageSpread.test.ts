import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stageSpread } from '@/lib/turns/stageSpread';

const USUAL = { p50: 90, p90: 120 };
const spread = (past: readonly number[]) => stageSpread('washing', past, USUAL);

describe('how long a stage takes', () => {
  it.each([
    { why: 'no turn yet: the usual spread', past: [], p50: 90, p90: 120, fromTurns: null },
    { why: 'two turns say too little of the half', past: [70, 80], p50: 90, p90: 120, fromTurns: null },
    { why: 'three say the half, not nine in ten', past: [70, 80, 95], p50: 80, p90: 120, fromTurns: null },
    { why: 'a longer one than usual was seen', past: [70, 150, 80], p50: 80, p90: 150, fromTurns: null },
    // by hand: of 9, nine tenths of 10 is the 9th; of 19, the 18th
    { why: 'nine turns: the longest', past: [9, 1, 8, 2, 7, 3, 6, 4, 5], p50: 5, p90: 9, fromTurns: 9 },
    {
      why: 'nineteen turns: the last but one',
      past: Array.from({ length: 19 }, (_, at) => at + 1),
      p50: 10,
      p90: 18,
      fromTurns: 19,
    },
  ])('$why', ({ past, p50, p90, fromTurns }) => {
    expect(spread(past)).toMatchObject({ stage: 'washing', p50, p90, fromTurns });
  });

  // leaving each of n + 1 turns out in turn is every way in which a next one can come: no distribution is assumed
  it('holds for the next turn at least nine times in ten, whatever the turns', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 10, maxLength: 51 }), (turns) => {
        const held = turns.filter((next, at) => next <= spread(turns.toSpliced(at, 1)).p90).length;
        expect(held).toBeGreaterThanOrEqual(0.9 * turns.length - 1e-9);
      }),
      { numRuns: 500 },
    );
  });

  it('is never longer half of the time than nine times in ten, and does not depend on the order of the turns', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 400 }), { maxLength: 30 }), (turns) => {
        const { p50, p90 } = spread(turns);
        expect(p50).toBeLessThanOrEqual(p90);
        expect(spread(turns.toReversed())).toEqual(spread(turns));
      }),
    );
  });
});
