import fc from 'fast-check';
import { expect, it } from 'vitest';
import { stageTime } from '@/lib/turns/stageTimes';

const USUAL = { minutes: 90, longShare: 1.5 };

it.each([
  { why: 'too few turns: the usual time', past: [200, 210], minutes: 90, long: 135, from: null },
  {
    why: 'three turns: their median, and mostly the stated share',
    past: [60, 60, 60],
    minutes: 60,
    long: 84,
    from: 3,
  },
  // R: quantile(c(50,60,70,80,150), 0.9, type = 7) is 122; (5 × 122/70 + 10 × 1.5) / 15 × 70 = 110.67
  { why: 'five turns, one very long', past: [150, 60, 70, 80, 50], minutes: 70, long: 111, from: 5 },
])('$why', ({ past, minutes, long, from }) => {
  expect(stageTime('washing', past, USUAL)).toEqual({
    stage: 'washing',
    minutes,
    longMinutes: long,
    fromTurns: from,
  });
});

it('nine in ten is never below the median, and comes to what is seen as turns are recorded', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 600 }), { minLength: 3, maxLength: 50 }), (past) => {
      const { minutes, longMinutes } = stageTime('washing', past, USUAL);
      expect(longMinutes).toBeGreaterThanOrEqual(minutes);
    }),
  );
  const many = Array.from({ length: 5_000 }, (_, at) => 100 + (at % 11));
  expect(stageTime('washing', many, USUAL).longMinutes).toBe(110);
});
