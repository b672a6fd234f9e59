import { describe, expect, it } from 'vitest';
import { named, SPARSE_INTERVAL, VARIED_CV2 } from '@/lib/restock/demandClass';
import { countsOf, varianceOf, withUncertainTime } from '@/lib/restock/demandModel';
import { countsIn, smallestCovering } from '@/lib/restock/distribution';
import { sizeAndInterval } from '@/lib/restock/sizeInterval';
import published from '../fixtures/published-demand.json';

// Cumulative Poisson tables, recomputed
describe('Poisson is the published one', () => {
  const { cdf, levels, quantiles } = published.poisson;
  it.each(Object.entries(cdf))('cumulative, mean %s', (mean, expected) => {
    const { upTo } = countsIn({ kind: 'poisson', mean: Number(mean) });
    expect(expected.length).toBeGreaterThan(4);
    expected.forEach((value, pieces) => {
      expect(upTo(pieces)).toBeCloseTo(value, 4);
    });
  });

  it.each(Object.entries(quantiles))('smallest that covers, mean %s', (mean, expected) => {
    const model = { kind: 'poisson', mean: Number(mean) } as const;
    expect(levels.map((level) => smallestCovering(model, level))).toEqual(expected);
  });
});

// r = m² ÷ (v − m), p = m ÷ v, recomputed
it.each(published['negative-binomial'].q95q99)('negative binomial, mean $m, variance $v', ({ m, v, q }) => {
  const model = countsOf(m, v);
  expect(model.kind).toBe('negativeBinomial');
  expect([0.95, 0.99].map((level) => smallestCovering(model, level))).toEqual(q);
});

// Croston's method with α 0.1, the first interval taken from the series; recomputed. Bias: Syntetos & Boylan 2005
it('size and interval, with and without the correction of the bias', () => {
  const { series, croston, biasCorrected } = published.intermittent;
  const found = sizeAndInterval(series, 0.1);
  expect(found?.uncorrected).toBeCloseTo(croston, 5);
  expect(found?.corrected).toBeCloseTo(biasCorrected, 5);
});

// Syntetos, Boylan & Croston, J Oper Res Soc 2005;56:495
it('the classes are cut where published', () => {
  const { interval, cv2 } = published.intermittent.cutoffs;
  expect([SPARSE_INTERVAL, VARIED_CV2]).toEqual([interval, cv2]);
  expect(named(interval - 0.01, cv2 - 0.01)).toBe('smooth');
  expect(named(interval - 0.01, cv2)).toBe('erratic');
  expect(named(interval, cv2 - 0.01)).toBe('intermittent');
  expect(named(interval, cv2)).toBe('lumpy');
});

describe('stock, as published', () => {
  const { setPool, reorderPoints } = published.stock;

  // 3 uses a day and a day's turn: eight sets cover 99.62 % (Poisson, recomputed)
  it('a pool of sets', () => {
    expect(countsIn({ kind: 'poisson', mean: 3 }).upTo(8)).toBeCloseTo(setPool.cover, 4);
    expect(smallestCovering({ kind: 'poisson', mean: 3 }, setPool.cover - 0.0001)).toBe(8);
  });

  // course page: 60 a week, 6 weeks of lead with a spread of 2, z 1.28: 514. Demand there is constant, here it is Poisson
  it('a lead time that is not certain adds rate² σ² to the variance', () => {
    const example = reorderPoints.find((one) => 'perWeek' in one);
    if (!example?.perWeek) throw new Error('the example is there');
    const { perWeek, leadWeeks, sdLeadWeeks, z, rop } = example;
    const mean = perWeek * leadWeeks;
    const certain = { kind: 'poisson', mean } as const;
    const met = withUncertainTime(certain, perWeek / 7, sdLeadWeeks * 7);
    expect(Math.round(mean + z * Math.sqrt(varianceOf(met) - varianceOf(certain)))).toBe(rop);
  });
});
