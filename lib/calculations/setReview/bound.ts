import quantile from '@stdlib/stats-base-dists-beta-quantile';

/**
 * Exact one-sided upper bound of a share seen `k` times in `n` (Clopper and Pearson): the share at which so few would be seen
 * once in `1 / (1 − confidence)` times. With none seen it is `1 − (1 − confidence)^(1/n)`; with nothing known it is 1.
 */
export function upperBound(k: number, n: number, confidence: number): number {
  if (k >= n) return 1;
  // the closed form of the same quantile: nothing is lost to a root search where it matters most
  if (k === 0) return -Math.expm1(Math.log1p(-confidence) / n);
  return quantile(confidence, k + 1, n - k);
}

/** The fewest cases after which a share never seen is bounded by `share`. */
export function casesNeeded(share: number, confidence: number): number {
  return Math.ceil(Math.log1p(-confidence) / Math.log1p(-share) - 1e-9);
}
