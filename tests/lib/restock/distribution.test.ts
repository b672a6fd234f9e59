import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chiSquareBeyond } from '@/lib/restock/chiSquare';
import { countsOf, type DemandModel, meanOf, over, thinned, varianceOf } from '@/lib/restock/demandModel';
import { countsIn, smallestCovering, surelyAsked } from '@/lib/restock/distribution';
import { demandModels } from './models';

const LEVELS = [0.9, 0.95, 0.99, 0.999];

// scipy 1.17.1: r, p = m*m/(v-m), m/v; stats.nbinom.ppf(level, r, p), .cdf(int(m) + 1, r, p), .pmf(3, r, p)
describe('negative binomial, against scipy', () => {
  it.each([
    { mean: 2, variance: 4, ppf: [5, 6, 9, 12], upTo: 0.8125, at3: 0.125 },
    { mean: 4, variance: 8, ppf: [8, 9, 13, 17], upTo: 0.74609375, at3: 0.15625 },
    { mean: 0.7, variance: 1.9, ppf: [2, 3, 6, 11], upTo: 0.836697129975742, at3: 0.03868054222796804 },
    { mean: 12, variance: 40, ppf: [20, 24, 31, 40], upTo: 0.6473694759390445, at3: 0.026393623682883338 },
  ])('mean $mean, variance $variance', ({ mean, variance, ppf, upTo, at3 }) => {
    const model = countsOf(mean, variance);
    expect(LEVELS.map((level) => smallestCovering(model, level))).toEqual(ppf);
    expect(countsIn(model).upTo(Math.floor(mean) + 1)).toBeCloseTo(upTo, 10);
    expect(countsIn(model).at(3)).toBeCloseTo(at3, 10);
  });
});

// scipy 1.17.1: stats.poisson.cdf(8, 3), stats.poisson.pmf(7, 4.2)
it('Poisson, against scipy', () => {
  expect(countsIn({ kind: 'poisson', mean: 3 }).upTo(8)).toBeCloseTo(0.996197007938324, 12);
  expect(countsIn({ kind: 'poisson', mean: 4.2 }).at(7)).toBeCloseTo(0.0685926643226606, 12);
});

// scipy 1.17.1 and numpy: sum over n < 80 of stats.poisson.pmf(n, 3) times the n-fold convolution of the sizes
it('compound Poisson, against sums of convolutions', () => {
  const sizes = [
    { pieces: 1, share: 0.5 },
    { pieces: 2, share: 0.3 },
    { pieces: 4, share: 0.2 },
  ];
  const model = { kind: 'compoundPoisson', cases: 3, sizes } as const;
  const { upTo } = countsIn(model);
  [
    [0, 0.049787068367863944],
    [1, 0.12446767091965988],
    [5, 0.5348609196300759],
    [10, 0.8860545927894345],
    [15, 0.9829442591230207],
  ].forEach(([pieces = 0, expected = 0]) => {
    expect(upTo(pieces)).toBeCloseTo(expected, 12);
  });
  expect(LEVELS.map((level) => smallestCovering(model, level))).toEqual([11, 13, 17, 22]);
});

// scipy 1.17.1 stats.chi2.sf(x, degrees)
it.each([
  [3.84, 1, 0.05004352124870519],
  [5.99, 2, 0.05003662708658629],
  [7.81, 3, 0.05010605635000589],
  [12.5, 7, 0.08526927515826925],
  [30, 20, 0.06985366069940986],
  [1.2, 5, 0.9448773650021219],
  [200, 103, 3.40339279543345e-8],
  [0, 4, 1],
])('χ² of %d on %d degrees', (x, degrees, expected) => {
  expect(chiSquareBeyond(x, degrees)).toBeCloseTo(expected, 11);
});

describe('every model', () => {
  const level = fc.double({ min: 0.5, max: 0.9995, noNaN: true });

  it('covers with the smallest number that does', () => {
    fc.assert(
      fc.property(demandModels, level, (model, chance) => {
        const { upTo } = countsIn(model);
        const s = smallestCovering(model, chance);
        expect(upTo(s)).toBeGreaterThanOrEqual(chance);
        expect(upTo(s - 1)).toBeLessThan(chance);
      }),
    );
  });

  it('is asked as surely for the largest number that is', () => {
    fc.assert(
      fc.property(demandModels, level, (model, chance) => {
        const { upTo } = countsIn(model);
        const q = surelyAsked(model, chance);
        if (q > 0) expect(1 - upTo(q - 1)).toBeGreaterThanOrEqual(chance);
        expect(1 - upTo(q)).toBeLessThan(chance);
      }),
    );
  });

  it('has the mean and the variance it says, summed piece by piece', () => {
    fc.assert(
      fc.property(demandModels, (model) => {
        const { at } = countsIn(model);
        const far = Math.ceil(meanOf(model) + 40 * Math.sqrt(varianceOf(model)) + 60);
        let [whole, mean, square] = [0, 0, 0];
        for (let n = 0; n <= far; n += 1) {
          whole += at(n);
          mean += n * at(n);
          square += n * n * at(n);
        }
        expect(whole).toBeCloseTo(1, 6);
        expect(mean).toBeCloseTo(meanOf(model), 4);
        expect((square - mean ** 2) / Math.max(1, varianceOf(model))).toBeCloseTo(
          varianceOf(model) / Math.max(1, varianceOf(model)),
          3,
        );
      }),
      { numRuns: 60 },
    );
  });

  it('needs no less for longer, and no more of what is left of it', () => {
    fc.assert(
      fc.property(demandModels, fc.double({ min: 0, max: 1, noNaN: true }), (model, left) => {
        const at = (one: DemandModel) => smallestCovering(one, 0.95);
        expect(at(over(model, 1 + left))).toBeGreaterThanOrEqual(at(model));
        expect(at(thinned(model, left))).toBeLessThanOrEqual(at(model));
        expect(meanOf(thinned(model, left))).toBeCloseTo(left * meanOf(model), 8);
      }),
    );
  });
});

// thinning a distribution piece by piece: sum over n of P(n) times binomial(n, left), written out
it('a thinned negative binomial is the thinned distribution itself', () => {
  const model = countsOf(3, 7.5);
  const left = 0.35;
  const before = countsIn(model);
  const after = countsIn(thinned(model, left));
  const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n - 1, k - 1) * n) / k);
  for (let k = 0; k < 8; k += 1) {
    let sum = 0;
    for (let n = k; n < 200; n += 1) sum += before.at(n) * choose(n, k) * left ** k * (1 - left) ** (n - k);
    expect(after.at(k)).toBeCloseTo(sum, 10);
  }
});
