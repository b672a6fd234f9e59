/** How many pieces one case takes, and the share of cases that take so many. Shares add up to 1. */
export interface CaseSize {
  pieces: number;
  share: number;
}

/** The demand of one stretch of time, as a distribution over whole pieces. */
export type DemandModel =
  | { kind: 'poisson'; mean: number }
  /** `variance` is above `mean`. */
  | { kind: 'negativeBinomial'; mean: number; variance: number }
  /** `cases` arrive on average, each by itself; each takes so many pieces. */
  | { kind: 'compoundPoisson'; cases: number; sizes: readonly CaseSize[] };

export type DemandModelKind = DemandModel['kind'];

/** Pieces. */
export function meanOf(model: DemandModel): number {
  return model.kind === 'compoundPoisson' ? model.cases * moment(model.sizes, 1) : model.mean;
}

/** Pieces squared. */
export function varianceOf(model: DemandModel): number {
  switch (model.kind) {
    case 'poisson':
      return model.mean;
    case 'negativeBinomial':
      return model.variance;
    case 'compoundPoisson':
      return model.cases * moment(model.sizes, 2);
  }
}

const moment = (sizes: readonly CaseSize[], power: number) =>
  sizes.reduce((all, { pieces, share }) => all + share * pieces ** power, 0);

/** The same demand over a stretch `times` as long, stretches being independent of one another. */
export function over(model: DemandModel, times: number): DemandModel {
  switch (model.kind) {
    case 'poisson':
      return { kind: 'poisson', mean: model.mean * times };
    case 'negativeBinomial':
      return { kind: 'negativeBinomial', mean: model.mean * times, variance: model.variance * times };
    case 'compoundPoisson':
      return { ...model, cases: model.cases * times };
  }
}

/**
 * The part of the demand that is left where each piece (or, with several per case, each case) is left by itself with
 * this chance. A thinned Poisson is Poisson, and a thinned negative binomial is one with the same number of failures.
 */
export function thinned(model: DemandModel, left: number): DemandModel {
  if (model.kind !== 'negativeBinomial') return over(model, left);
  const mean = model.mean * left;
  return countsOf(mean, mean + left ** 2 * (model.variance - model.mean));
}

/** A variance no further above the mean than floating numbers tell apart is no reason for another model. */
const TOLD_APART = 1e-9;

/** Poisson, or negative binomial where the variance exceeds the mean. */
export function countsOf(mean: number, variance: number): DemandModel {
  return mean > 0 && variance > mean * (1 + TOLD_APART)
    ? { kind: 'negativeBinomial', mean, variance }
    : { kind: 'poisson', mean };
}

/**
 * Demand over a time that is not certain: with the spread of the time itself, by mean and variance (Var = v + rate² σ²).
 * `ratePerDay` in pieces, `sdDays` the standard deviation of the time.
 */
export function withUncertainTime(model: DemandModel, ratePerDay: number, sdDays: number): DemandModel {
  if (sdDays === 0) return model;
  return countsOf(meanOf(model), varianceOf(model) + (ratePerDay * sdDays) ** 2);
}
