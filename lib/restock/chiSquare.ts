import normalCdf from '@stdlib/stats-base-dists-normal-cdf';

/**
 * P(χ² ≥ x) with `degrees` of freedom, by the finite sums for odd and even degrees (Abramowitz & Stegun 26.4.4, 26.4.5).
 * Written out because no package at hand has it by itself; checked against scipy.
 */
export function chiSquareBeyond(x: number, degrees: number): number {
  if (x <= 0) return 1;
  const root = Math.sqrt(x);
  const isOdd = degrees % 2 === 1;
  // the first term after the normal tail (odd), or the sum's 1 (even); each next one times x over the next degree
  let term = isOdd ? 2 * root * Math.exp(-x / 2 - Math.log(2 * Math.PI) / 2) : Math.exp(-x / 2);
  let sum = isOdd ? 2 * normalCdf(-root, 0, 1) : 0;
  for (let degree = isOdd ? 1 : 0; degree + 2 <= degrees; degree += 2) {
    sum += term;
    term *= x / (degree + 2);
  }
  return Math.min(1, sum);
}
