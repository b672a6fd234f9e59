import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expiryLoss } from '@/lib/calculations/expiryLoss/expiryLoss';
import { checkExpiryLoss, expiryLossInput } from '@/lib/calculations/expiryLoss/schema';

/** Invented cases, worked by hand and recomputed independently; see the file. */
const [E1] = JSON.parse(readFileSync('tests/fixtures/calculation-examples.json', 'utf8'))['expiry-loss'];

const said = (input: Record<string, unknown>) => expiryLoss(expiryLossInput.parse(input));
function answerOf(input: Record<string, unknown>) {
  const found = said(input);
  if (found.outcome !== 'answered') throw new Error(JSON.stringify(found.missing));
  return found.answer;
}
const one = (units: number, months: number) => [{ lot: 'A', units, months }];

describe('worked example E1', () => {
  const lots = (E1.lots as { units: number; expiresMonth: number }[]).map(({ units, expiresMonth }, at) => ({
    lot: `lot${at + 1}`,
    units,
    months: expiresMonth,
  }));

  it('is more than the point forecast, lot by lot', () => {
    const { perMonth, expect: expected } = E1;
    const found = answerOf({ perMonth, lots });
    expect(found.lots[0]?.expectedLost).toBeCloseTo(expected.lot1, 2);
    expect(found.lots[1]?.expectedLost).toBeCloseTo(expected.lot2, 2);
    expect(found.expectedLost).toBeCloseTo(expected.total, 2);
    expect(found.pointForecastLost).toBe(expected.pointForecast);
  });

  it('a case in month 7 is never offered lot 1; one in month 6 still is', () => {
    const { offered } = answerOf({ perMonth: 0.5, lots, casesAtMonths: [6, 7, 19] });
    expect(offered.map((case_) => case_.lots)).toEqual([['lot1', 'lot2'], ['lot2'], []]);
  });
});

// scipy 1.17.1: sum((q - k) * stats.poisson.pmf(k, m) for k in range(q))
describe('one lot is the Poisson expectation of the reference package', () => {
  it.each([
    [4, 3, 1.3193573117483948],
    [10, 9, 1.7732090044176467],
    [20, 5, 15.000000104217808],
    [1, 0.2, 0.8187307530779818],
    [100, 100, 3.9860996809149096],
    [500, 480, 22.187645977757487],
  ])('%i units, %f asked for', (units, mean, lost) => {
    expect(answerOf({ perMonth: mean, lots: one(units, 1) }).expectedLost).toBeCloseTo(lost, 8);
  });

  // scipy 1.17.1: the same with stats.nbinom.pmf(k, m / (v - 1), 1 / v), v the variance to mean
  it.each([
    [4, 3, 2, 1.59375],
    [10, 9, 1.5, 2.0392838070490558],
    [30, 20, 3, 10.531560948345255],
  ])('%i units, %f asked for, variance to mean %f', (units, perMonth, varianceToMean, lost) => {
    expect(answerOf({ perMonth, varianceToMean, lots: one(units, 1) }).expectedLost).toBeCloseTo(lost, 8);
  });
});

// numpy 2 random Poisson demand, 400,000 shelves, seed 7; standard errors under 0.003
it('three lots agree with a simulation of the shelf', () => {
  const lots = [
    { lot: 'A', units: 3, months: 2 },
    { lot: 'B', units: 5, months: 5 },
    { lot: 'C', units: 8, months: 14 },
  ];
  const found = answerOf({ perMonth: 0.9, lots }).lots.map((lot) => lot.expectedLost);
  for (const [at, lost] of [1.3602, 2.2619, 1.0287].entries())
    expect(Math.abs((found[at] ?? 0) - lost)).toBeLessThan(0.012);
});

describe('what must hold of any shelf', () => {
  const shelf = fc.record({
    perMonth: fc.double({ min: 0, max: 6, noNaN: true }),
    varianceToMean: fc.constantFrom(1, 1.5, 3),
    lots: fc
      .array(
        fc.record({ units: fc.integer({ min: 0, max: 12 }), months: fc.integer({ min: -2, max: 30 }) }),
        {
          minLength: 1,
          maxLength: 5,
        },
      )
      .map((lots) => lots.map((lot, at) => ({ lot: `L${at}`, ...lot }))),
  });

  it('no more is lost of a lot than lies there, and the expectation is never below the average’s', () => {
    fc.assert(
      fc.property(shelf, (input) => {
        const found = answerOf(input);
        for (const lot of found.lots) {
          expect(lot.expectedLost).toBeGreaterThanOrEqual(-1e-9);
          expect(lot.expectedLost).toBeLessThanOrEqual(lot.units + 1e-9);
          if (lot.pastUseBy) expect(lot.expectedLost).toBeCloseTo(lot.units, 9);
          expect(lot.likelyLost).toBeLessThanOrEqual(lot.units);
        }
        // Jensen's inequality, for all lots together
        expect(found.expectedLost).toBeGreaterThanOrEqual(found.pointForecastLost - 1e-6);
      }),
    );
  });

  it('the order in which lots are given changes nothing; splitting a lot changes nothing of the whole', () => {
    fc.assert(
      fc.property(shelf, fc.nat(), (input, at) => {
        const total = answerOf(input).expectedLost;
        expect(answerOf({ ...input, lots: [...input.lots].reverse() }).expectedLost).toBeCloseTo(total, 9);
        const split = input.lots[at % input.lots.length];
        if (!split) return;
        const half = Math.floor(split.units / 2);
        const lots = [
          ...input.lots.filter((lot) => lot !== split),
          { ...split, units: half },
          { ...split, lot: 'rest', units: split.units - half },
        ];
        expect(answerOf({ ...input, lots }).expectedLost).toBeCloseTo(total, 9);
      }),
    );
  });

  it('more use never loses more, and a later use-by never loses more', () => {
    fc.assert(
      fc.property(shelf, fc.double({ min: 0.01, max: 3, noNaN: true }), (input, more) => {
        const lost = answerOf(input).expectedLost;
        expect(answerOf({ ...input, perMonth: input.perMonth + more }).expectedLost).toBeLessThanOrEqual(
          lost + 1e-9,
        );
        const later = input.lots.map((lot) => ({ ...lot, months: lot.months + 1 }));
        expect(answerOf({ ...input, lots: later }).expectedLost).toBeLessThanOrEqual(lost + 1e-9);
      }),
    );
  });

  it('nothing asked for loses everything', () => {
    expect(answerOf({ perMonth: 0, lots: one(7, 12) })).toMatchObject({
      expectedLost: 7,
      pointForecastLost: 7,
    });
  });
});

describe('what to use or swap first', () => {
  it('units more likely lost than used are the median of what is lost', () => {
    // scipy 1.17.1: P(D <= 4 - k) > 1/2 for Poisson(3) holds up to k = 1: cdf(3) = 0.647, cdf(2) = 0.423
    const [lot] = answerOf({ perMonth: 0.5, lots: one(4, 6) }).lots;
    expect(lot?.likelyLost).toBe(1);
    expect(lot?.sentence).toContain('offer 1 of 4');
    expect(answerOf({ perMonth: 3, lots: one(2, 12) }).lots[0]?.sentence).toBe('Likely to be used in time.');
    expect(answerOf({ perMonth: 3, lots: one(2, -1) }).lots[0]?.sentence).toContain('Past use-by');
  });

  it('is worth what it cost, where every price is known', () => {
    const lots = [
      { lot: 'A', units: 4, months: 6, unitPence: 3_800 },
      { lot: 'B', units: 6, months: 18, unitPence: 1_000 },
    ];
    const found = answerOf({ perMonth: 0.5, lots });
    expect(found.expectedLostPence).toBe(Math.round(1.3193573 * 3_800) + Math.round(0.851611 * 1_000));
    const unpriced = answerOf({ perMonth: 0.5, lots: lots.map((lot) => ({ ...lot, unitPence: null })) });
    expect(unpriced.expectedLostPence).toBeNull();
  });
});

describe('what is not known', () => {
  it('use that is not known establishes nothing', () => {
    expect(said({ perMonth: null, lots: one(4, 6) })).toMatchObject({
      outcome: 'notEstablished',
      missing: [{ path: ['perMonth'] }],
      known: null,
    });
  });

  it('a lot without a use-by is named, and the rest is at least what is lost', () => {
    const found = said({ perMonth: 0.5, lots: [...one(4, 6), { lot: 'B', units: 3, months: null }] });
    expect(found).toMatchObject({ outcome: 'notEstablished', missing: [{ path: ['lots', 1, 'months'] }] });
    if (found.outcome !== 'notEstablished') throw new Error('one is missing');
    expect(found.known?.expectedLost).toBeCloseTo(1.3194, 4);
  });

  it('refuses a lot given twice and more than can be worked out', () => {
    const input = expiryLossInput.parse({ perMonth: 1, lots: [...one(1_500, 6), ...one(1_500, 9)] });
    expect(checkExpiryLoss(input).map(({ code }) => code)).toEqual(['duplicate', 'too-many']);
  });
});
