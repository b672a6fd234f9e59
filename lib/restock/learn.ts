import { chiSquareBeyond } from './chiSquare';
import { type Classified, classOf } from './demandClass';
import { countsOf, type DemandModel, meanOf, over } from './demandModel';
import { inPeriods, sizesOf, type UseRecord } from './record';
import { type SizeInterval, sizeAndInterval } from './sizeInterval';

/** Demand is counted by weeks. */
export const PERIOD_DAYS = 7;
/** Fewer weeks than a quarter of a year say too little of an item (our own choice). */
export const LEAST_PERIODS = 13;
/** Fewer demands than this have no interval worth smoothing (our own choice). */
const LEAST_DEMANDS = 5;
/** Cases that come in clusters are told from chance at this level. */
const DISPERSION_LEVEL = 0.05;

/** Why a model was chosen. `clustered`: several per case, and the cases themselves come more unevenly than by chance. */
export type WhyModel = 'varianceWithinMean' | 'varianceAboveMean' | 'severalPerCase' | 'clustered' | 'stated';

export interface Learned {
  periods: readonly number[];
  mean: number;
  /** Of the periods' demand, by n − 1. */
  variance: number;
  demandClass: Classified;
  /** `null` where demand is not sparse, or too little of it is on record: the plain mean then counts. */
  sizeInterval: SizeInterval | null;
  /** The demand of one week, booked or not. */
  model: DemandModel;
  why: WhyModel;
  /** Every model that came into question, as the record has it; the chosen one first. */
  candidates: readonly DemandModel[];
}

export type Learning =
  | { outcome: 'learned'; learned: Learned }
  | { outcome: 'tooShort'; periods: number }
  /** `atMost`: pieces a week that the record still allows, 95 % sure: 1 − 0.05^(1/n) cases a week. */
  | { outcome: 'noUse'; periods: number; atMost: number };

/** What a record says of the demand of a week, and which model says it best. */
export function learn(record: UseRecord, alpha: number): Learning {
  const periods = inPeriods(record, PERIOD_DAYS);
  if (periods.length < LEAST_PERIODS) return { outcome: 'tooShort', periods: periods.length };
  const demandClass = classOf(periods);
  if (demandClass === null)
    return { outcome: 'noUse', periods: periods.length, atMost: 1 - 0.05 ** (1 / periods.length) };
  const { mean, variance } = spread(periods);
  const { chosen, why, others } = modelOf(record, mean, variance);
  const isSparse = demandClass.class === 'intermittent' || demandClass.class === 'lumpy';
  const enough = periods.filter((pieces) => pieces > 0).length >= LEAST_DEMANDS;
  const sizeInterval = isSparse && enough ? sizeAndInterval(periods, alpha) : null;
  return {
    outcome: 'learned',
    learned: {
      periods,
      mean,
      variance,
      demandClass,
      sizeInterval,
      model: sizeInterval ? over(chosen, sizeInterval.corrected / meanOf(chosen)) : chosen,
      why,
      candidates: [chosen, ...others],
    },
  };
}

function modelOf(record: UseRecord, mean: number, variance: number) {
  const poisson: DemandModel = { kind: 'poisson', mean };
  const single = countsOf(mean, variance);
  const uses = record.uses.filter(({ day }) => day >= record.days % PERIOD_DAYS);
  const sizes = sizesOf(uses);
  const isSeveral = sizes.some(({ pieces }) => pieces > 1);
  if (!isSeveral) {
    return single.kind === 'poisson'
      ? { chosen: poisson, why: 'varianceWithinMean' as const, others: [] }
      : { chosen: single, why: 'varianceAboveMean' as const, others: [poisson] };
  }
  const cases = inPeriods(record, PERIOD_DAYS, () => 1);
  const compound: DemandModel = { kind: 'compoundPoisson', cases: spread(cases).mean, sizes };
  if (single.kind === 'negativeBinomial' && isClustered(cases))
    return { chosen: single, why: 'clustered' as const, others: [compound, poisson] };
  const others = single.kind === 'poisson' ? [poisson] : [single, poisson];
  return { chosen: compound, why: 'severalPerCase' as const, others };
}

/** Fisher's test of dispersion: (n − 1) variance ÷ mean is χ² with n − 1 degrees where cases come by chance alone. */
function isClustered(cases: readonly number[]): boolean {
  const { mean, variance } = spread(cases);
  const degrees = cases.length - 1;
  return chiSquareBeyond((degrees * variance) / mean, degrees) < DISPERSION_LEVEL;
}

function spread(values: readonly number[]): { mean: number; variance: number } {
  const mean = values.reduce((all, value) => all + value, 0) / values.length;
  const variance = values.reduce((all, value) => all + (value - mean) ** 2, 0) / (values.length - 1);
  return { mean, variance };
}
