import { type DemandModel, meanOf, over, thinned, withUncertainTime } from './demandModel';
import { PERIOD_DAYS } from './learn';
import { type Use, unbookedShare } from './record';

/** Demand of one week, booked or not; with the uses that say how early it is booked, or `null` where it is unbooked as stated. */
export interface WeekOfDemand {
  model: DemandModel;
  uses: readonly Use[] | null;
}

/**
 * What nobody has booked yet of the demand of the next `days` days, a time whose standard deviation is `sdDays`. `share`
 * of all demand is not booked; `null` where that is how it was stated.
 */
export function unbookedDemand(
  { model, uses }: WeekOfDemand,
  days: number,
  sdDays: number,
): { demand: DemandModel; share: number | null } {
  const share = uses === null || days === 0 ? null : unbookedShare(uses, days);
  const all = over(model, days / PERIOD_DAYS);
  const unbooked = share === null ? all : thinned(all, share);
  const ratePerDay = days === 0 ? 0 : meanOf(unbooked) / days;
  return { demand: withUncertainTime(unbooked, ratePerDay, sdDays), share };
}
