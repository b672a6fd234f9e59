import negativeBinomialCdf from '@stdlib/stats-base-dists-negative-binomial-cdf';
import negativeBinomialPmf from '@stdlib/stats-base-dists-negative-binomial-pmf';
import poissonCdf from '@stdlib/stats-base-dists-poisson-cdf';
import poissonPmf from '@stdlib/stats-base-dists-poisson-pmf';
import { countsOf, type DemandModel, meanOf, varianceOf } from './demandModel';

/** Beyond so many cases e^−λ comes near the least number there is; mean and variance say enough there. */
const MOST_CASES = 500;
/** A mean below this is one of none: P(D > 0) is no more than it. */
const LEAST_MEAN = 1e-12;

/** A distribution over whole pieces, asked piece by piece. */
export interface Counts {
  /** P(D = pieces). */
  at: (pieces: number) => number;
  /** P(D ≤ pieces); 0 below none. */
  upTo: (pieces: number) => number;
}

export function countsIn(model: DemandModel): Counts {
  if (meanOf(model) < LEAST_MEAN) return NEVER;
  switch (model.kind) {
    case 'poisson': {
      const { mean } = model;
      return {
        at: (pieces) => poissonPmf(pieces, mean),
        upTo: (pieces) => (pieces < 0 ? 0 : poissonCdf(pieces, mean)),
      };
    }
    case 'negativeBinomial': {
      const { mean, variance } = model;
      const failures = mean ** 2 / (variance - mean);
      const chance = mean / variance;
      return {
        at: (pieces) => negativeBinomialPmf(pieces, failures, chance),
        upTo: (pieces) => (pieces < 0 ? 0 : negativeBinomialCdf(pieces, failures, chance)),
      };
    }
    case 'compoundPoisson':
      return model.cases > MOST_CASES
        ? countsIn(countsOf(meanOf(model), varianceOf(model)))
        : compoundCounts(model.cases, model.sizes);
  }
}

const NEVER: Counts = { at: (pieces) => (pieces === 0 ? 1 : 0), upTo: (pieces) => (pieces < 0 ? 0 : 1) };

/** Panjer's recursion: P(0) = e^−λ, P(n) = λ/n Σ j f(j) P(n−j); cases of no pieces at all are not among the sizes. */
function compoundCounts(cases: number, sizes: readonly { pieces: number; share: number }[]): Counts {
  const each = [Math.exp(-cases)];
  const summed = [...each];
  const grow = (pieces: number) => {
    for (let n = each.length; n <= pieces; n += 1) {
      let sum = 0;
      for (const { pieces: j, share } of sizes) if (j <= n) sum += j * share * (each[n - j] ?? 0);
      each.push((cases / n) * sum);
      summed.push((summed[n - 1] ?? 0) + (each[n] ?? 0));
    }
  };
  return {
    at(pieces) {
      grow(pieces);
      return each[pieces] ?? 0;
    },
    upTo(pieces) {
      if (pieces < 0) return 0;
      grow(pieces);
      return Math.min(1, summed[pieces] ?? 0);
    },
  };
}

/** The smallest number of pieces s with P(D ≤ s) ≥ `chance`, which is below 1. */
export function smallestCovering(model: DemandModel, chance: number): number {
  const { upTo } = countsIn(model);
  let high = Math.max(1, Math.ceil(meanOf(model)));
  while (upTo(high) < chance) high *= 2;
  let low = -1;
  // invariant: upTo(low) < chance ≤ upTo(high)
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (upTo(middle) < chance) low = middle;
    else high = middle;
  }
  return high;
}

/** The largest number of pieces q with P(D ≥ q) ≥ `chance`: so many are asked for at least, as surely as that. */
export function surelyAsked(model: DemandModel, chance: number): number {
  const { upTo } = countsIn(model);
  const isAsked = (pieces: number) => 1 - upTo(pieces - 1) >= chance;
  let low = 0;
  let high = Math.max(1, Math.ceil(meanOf(model)));
  while (isAsked(high)) high *= 2;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (isAsked(middle)) low = middle;
    else high = middle;
  }
  return low;
}
