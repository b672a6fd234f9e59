import negativeBinomial from '@stdlib/stats-base-dists-negative-binomial-cdf';
import poisson from '@stdlib/stats-base-dists-poisson-cdf';
import { upperBound } from './bound';

/** In how many cases how many pieces were used; cases that used none are the rest. */
export type UsedIn = readonly { pieces: number; cases: number }[];

/** Pieces a case asks for, as a distribution fitted to what was seen. */
export interface DemandModel {
  kind: 'poisson' | 'negativeBinomial';
  mean: number;
  variance: number;
}

const MOST_PIECES = 400;

/**
 * Poisson, or negative binomial by moments (r = m² ÷ (v − m), p = m ÷ v) where the cases vary more than a Poisson would.
 * `null` where nothing was used: a mean of nothing fits anything.
 */
export function fitDemand(usedIn: UsedIn, cases: number): DemandModel | null {
  const pieces = usedIn.reduce((all, one) => all + one.pieces * one.cases, 0);
  if (pieces === 0) return null;
  const mean = pieces / cases;
  const users = usedIn.reduce((all, one) => all + one.cases, 0);
  const squares = usedIn.reduce((all, one) => all + one.cases * (one.pieces - mean) ** 2, 0);
  const variance = cases < 2 ? mean : (squares + (cases - users) * mean ** 2) / (cases - 1);
  // a variance that differs by rounding alone is the mean
  return variance > mean * (1 + 1e-9)
    ? { kind: 'negativeBinomial', mean, variance }
    : { kind: 'poisson', mean, variance };
}

/** P(a case asks for more than `quantity`), by the model. */
export function chanceAbove(quantity: number, { kind, mean, variance }: DemandModel): number {
  const within =
    kind === 'poisson'
      ? poisson(quantity, mean)
      : negativeBinomial(quantity, mean ** 2 / (variance - mean), mean / variance);
  return Math.max(0, 1 - within);
}

/** In how many cases more than `quantity` was asked for. */
export function casesAbove(quantity: number, usedIn: UsedIn): number {
  return usedIn.reduce((all, { pieces, cases }) => all + (pieces > quantity ? cases : 0), 0);
}

/** Smallest quantity that runs out in at most `risk` of the cases: as seen, by the model, and at the exact bound. */
export function smallestQuantity(
  usedIn: UsedIn,
  cases: number,
  model: DemandModel | null,
  { risk, confidence }: { risk: number; confidence: number },
) {
  return {
    seen: smallest((q) => casesAbove(q, usedIn) / cases <= risk),
    fitted: model === null ? null : smallest((q) => chanceAbove(q, model) <= risk),
    // never reached where even "never seen" is not yet bounded by the risk: too few cases, not a large quantity
    atBound: smallest((q) => upperBound(casesAbove(q, usedIn), cases, confidence) <= risk),
  };
}

function smallest(enough: (quantity: number) => boolean): number | null {
  for (let quantity = 0; quantity <= MOST_PIECES; quantity += 1) if (enough(quantity)) return quantity;
  return null;
}
