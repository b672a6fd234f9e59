import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calculations } from '@/lib/calculations/registry';
import { thermalDoseInput } from '@/lib/calculations/thermalDose/schema';
import { thermalDose } from '@/lib/calculations/thermalDose/thermalDose';

const BAND = { lowC: 134, highC: 137, holdSeconds: 180 };
const log = (...pairs: [second: number, celsius: number | null][]) =>
  pairs.map(([second, celsius]) => ({ second, celsius }));
const steps = (from: number, to: number, every: number, celsius: number): [number, number][] =>
  Array.from({ length: Math.floor((to - from) / every) + 1 }, (_, at) => [from + at * every, celsius]);
const dose = (readings: { second: number; celsius: number | null }[], more: Record<string, unknown> = {}) =>
  thermalDose(thermalDoseInput.parse({ readings, band: BAND, ...more }));

describe('rules between two readings', () => {
  // by hand: rates at 80 and 90 °C are 1 and 10; 10 s: trapezoid 55, left 10
  it('trapezoid is the mean of both ends, left the earlier one', () => {
    const readings = log([0, 80], [10, 90]);
    expect(dose(readings)).toMatchObject({ answer: { a0Seconds: 55 } });
    expect(dose(readings, { rule: 'left' })).toMatchObject({ answer: { a0Seconds: 10 } });
  });

  it('below 65 °C nothing is given, at 65 °C it is', () => {
    expect(dose(log([0, 64.9], [10, 64.9]))).toMatchObject({ answer: { a0Seconds: 0 } });
    // by hand: 10^((65 − 80) ÷ 10) × 10 s = 0.316 s
    expect(dose(log([0, 65], [10, 65]))).toMatchObject({ answer: { a0Seconds: 0.3 } });
  });
});

describe('what is not established', () => {
  it('a gap is named with its ends; the sums are then the least they can be', () => {
    const whole = dose(log(...steps(0, 300, 10, 135)));
    const cut = dose(log(...steps(0, 300, 10, 135).filter(([second]) => second < 100 || second > 150)));
    expect(cut.outcome).toBe('notEstablished');
    if (cut.outcome !== 'notEstablished' || whole.outcome !== 'answered') throw new Error('one of each');
    expect(cut.missing).toEqual([
      { path: ['readings', 10, 'second'], what: 'temperatures between 90 s and 160 s' },
    ]);
    expect(cut.known?.f0Minutes).toBeLessThan(whole.answer.f0Minutes);
  });

  it('a reading without a value is named and not bridged', () => {
    const answer = dose(log([0, 135], [5, null], [10, 135]));
    expect(answer).toMatchObject({
      outcome: 'notEstablished',
      missing: [{ path: ['readings', 1, 'celsius'], what: 'the temperature at 5 s' }],
      known: { f0Minutes: 0, loggedSeconds: 0 },
    });
  });

  it.each([
    { why: 'goes back', readings: log([0, 135], [20, 135], [10, 135]), at: 2 },
    { why: 'comes twice', readings: log([0, 135], [10, 135], [10, 136]), at: 2 },
  ])('a time that $why leaves the whole log not established', ({ readings, at }) => {
    expect(dose(readings)).toMatchObject({
      outcome: 'notEstablished',
      missing: [{ path: ['readings', at, 'second'] }],
      known: null,
    });
  });

  it('one reading is no log', () => {
    expect(dose(log([0, 135]))).toMatchObject({ outcome: 'notEstablished', known: null });
  });
});

describe('holding has three outcomes', () => {
  it.each([
    { why: 'long enough, ends included', readings: steps(0, 180, 10, 134), outcome: 'held', longest: 180 },
    { why: 'one reading short', readings: steps(0, 170, 10, 134), outcome: 'notHeld', longest: 170 },
    { why: 'too hot', readings: steps(0, 180, 10, 137.1), outcome: 'notHeld', longest: 0 },
    {
      why: 'two stretches are not one',
      readings: [...steps(0, 100, 10, 135), [110, 133.9], ...steps(120, 220, 10, 135)] as [number, number][],
      outcome: 'notHeld',
      longest: 100,
    },
    {
      why: 'a gap inside might hide a drop',
      readings: [...steps(0, 100, 10, 135), ...steps(150, 250, 10, 135)],
      outcome: 'notEstablished',
      longest: 100,
    },
    {
      why: 'a gap elsewhere changes nothing that is held',
      readings: [...steps(0, 10, 10, 20), ...steps(100, 290, 10, 135)],
      outcome: 'held',
      longest: 190,
    },
    {
      why: 'a gap too short to make up for it',
      readings: [...steps(0, 60, 10, 135), ...steps(80, 100, 10, 20)],
      outcome: 'notHeld',
      longest: 60,
    },
  ])('$why: $outcome', ({ readings, outcome, longest }) => {
    const answer = dose(log(...readings));
    const known = answer.outcome === 'answered' ? answer.answer : answer.known;
    expect(known?.holding).toMatchObject({ outcome, longestSeconds: longest });
  });

  it('says between which times and how cool and hot it was', () => {
    const answer = dose(log([0, 100], [10, 134.2], [20, 135.9], [30, 134.6], [40, 120]));
    expect(answer).toMatchObject({
      answer: { holding: { fromSecond: 10, toSecond: 30, lowestC: 134.2, highestC: 135.9 } },
    });
  });
});

describe('whatever the log', () => {
  const temperatures = fc.array(fc.double({ min: 20, max: 140, noNaN: true }), {
    minLength: 2,
    maxLength: 60,
  });

  it('more heat never gives less, and no stretch is longer than the log', () => {
    fc.assert(
      fc.property(temperatures, fc.integer({ min: 1, max: 10 }), (all, every) => {
        const readings = all.map((celsius, at) => ({ second: at * every, celsius }));
        const answers = [0, 1].map((more) =>
          dose(readings.map((one) => ({ ...one, celsius: one.celsius + more }))),
        );
        const [cool, warm] = answers.map((one) => {
          if (one.outcome !== 'answered') throw new Error('nothing is missing');
          return one.answer;
        });
        if (!cool || !warm) throw new Error('two answers');
        expect(warm.a0Seconds).toBeGreaterThanOrEqual(cool.a0Seconds);
        expect(warm.f0Minutes).toBeGreaterThanOrEqual(cool.f0Minutes);
        expect(cool.holding?.longestSeconds).toBeLessThanOrEqual(cool.loggedSeconds);
      }),
    );
  });

  it('taking readings away never turns “not held” or “not established” into “held”', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(133, 134, 136, 138), fc.boolean()), {
          minLength: 10,
          maxLength: 60,
        }),
        (all) => {
          const outcomeOf = (readings: { second: number; celsius: number }[]) => {
            const answer = dose(readings, { band: { ...BAND, holdSeconds: 60 } });
            return (answer.outcome === 'answered' ? answer.answer : answer.known)?.holding?.outcome;
          };
          const readings = all.map(([celsius], at) => ({ second: at * 10, celsius }));
          const whole = outcomeOf(readings);
          const fewer = outcomeOf(readings.filter((_, at) => all[at]?.[1]));
          if (fewer === 'held') expect(whole).toBe('held');
        },
      ),
    );
  });
});

it('is in the registry: bad input gets every problem at once, with its path', async () => {
  const bad = {
    readings: [{ second: -1, celsius: 'hot' }],
    band: { lowC: 134, highC: 130, holdSeconds: 180 },
  };
  const noSolver = { solver: () => Promise.reject(new Error('it asks for none')) };
  const evaluate = async (input: unknown) => {
    const result = await calculations['thermal-dose']?.evaluate(input, noSolver);
    if (!result || result.ok) throw new Error('it is registered, and refuses');
    return result.problems.map(({ path }) => path.join('.'));
  };
  expect(await evaluate(bad)).toEqual(['readings.0.second', 'readings.0.celsius']);
  expect(await evaluate({ ...bad, readings: [{ second: 0, celsius: 20 }] })).toEqual(['band.highC']);
});
