import { type DemandModel, meanOf } from './demandModel';
import { smallestCovering, surelyAsked } from './distribution';

/** Pieces of one lot at hand, and how many days they are good for; `null` where no use-by is stated. */
export interface Lot {
  pieces: number;
  daysLeft: number | null;
}

/** What decides how much is kept, however much is there now. */
export interface LevelQuestion {
  /** Demand nobody has booked, until the order after this one can be here. */
  cover: DemandModel;
  coverDays: number;
  /** P(demand ≤ stock) over that time, at least. */
  service: number;
  /** Demand until pieces ordered now are past their use-by; `null` where their use-by is not known. */
  untilUseBy: { demand: DemandModel; days: number } | null;
  /** How surely a piece must be asked for before its use-by to be ordered. */
  sureOfUse: number;
}

/** How things stand. */
export interface Standing {
  lots: readonly Lot[];
  onOrder: number;
  /** What confirmed plans of booked cases take in the time covered. */
  committed: number;
  /** What slots of sets lack now. */
  toRefill: number;
  packOf: number;
}

/** The levels an order goes by. */
export interface Levels {
  coverDays: number;
  ratePerDay: number;
  orderUpTo: number;
  /** So many are asked for, surely enough, before pieces ordered now are past their use-by. */
  untilUseBy: { days: number; ratePerDay: number; asked: number } | null;
}

export interface Order {
  onHand: number;
  /** Of those on hand, what passes its use-by before it is asked for, within the time covered. */
  passing: number;
  /** on hand − passing + on order − committed − to refill; below none where more is promised than there is. */
  position: number;
  orderUpTo: number;
  /** Pieces that lack before packs and use-by are looked at. */
  lacking: number;
  /** The most that can be ordered and used before its use-by; `null` where that is not known. */
  useByLimit: number | null;
  /** Whole packs. */
  order: number;
}

export function levelsOf({ cover, coverDays, service, untilUseBy, sureOfUse }: LevelQuestion): Levels {
  return {
    coverDays,
    ratePerDay: meanOf(cover) / coverDays,
    orderUpTo: smallestCovering(cover, service),
    untilUseBy: untilUseBy && {
      days: untilUseBy.days,
      ratePerDay: untilUseBy.days === 0 ? 0 : meanOf(untilUseBy.demand) / untilUseBy.days,
      asked: surelyAsked(untilUseBy.demand, sureOfUse),
    },
  };
}

/**
 * How much to order: up to the smallest level that reaches the service, in whole packs, and never past what is asked for
 * before its use-by.
 */
export function orderAt(levels: Levels, standing: Standing): Order {
  const { coverDays, ratePerDay, orderUpTo, untilUseBy } = levels;
  const { lots, onOrder, packOf } = standing;
  const onHand = sum(lots.filter(isGood));
  const taken = standing.committed + standing.toRefill;
  const passing = passingWithin(lots, coverDays, taken, ratePerDay);
  const position = onHand - passing + onOrder - taken;
  const lacking = Math.max(0, orderUpTo - position);
  let useByLimit: number | null = null;
  if (untilUseBy !== null) {
    const passed = passingWithin(lots, untilUseBy.days, taken, untilUseBy.ratePerDay);
    const inTheWay = onHand - passed + onOrder - taken;
    useByLimit = Math.max(0, untilUseBy.asked - inTheWay);
  }
  const whole = Math.ceil(lacking / packOf) * packOf;
  const order = useByLimit === null || whole <= useByLimit ? whole : Math.floor(useByLimit / packOf) * packOf;
  return { onHand, passing, position, orderUpTo, lacking, useByLimit, order };
}

const isGood = ({ daysLeft }: Lot) => daysLeft === null || daysLeft >= 0;
const sum = (lots: readonly Lot[]) => lots.reduce((all, { pieces }) => all + pieces, 0);

/**
 * Pieces that pass their use-by before they are asked for, within so many days: first expired, first out, against what is
 * promised and the mean of what is not.
 */
function passingWithin(lots: readonly Lot[], days: number, promised: number, ratePerDay: number): number {
  let before = 0;
  let passed = 0;
  const dated = lots.flatMap(({ pieces, daysLeft }) =>
    daysLeft !== null && daysLeft >= 0 && daysLeft < days ? [{ pieces, daysLeft }] : [],
  );
  for (const { pieces, daysLeft } of dated.sort((a, b) => a.daysLeft - b.daysLeft)) {
    before += pieces;
    // good through the day itself
    const asked = promised + Math.floor(ratePerDay * (daysLeft + 1));
    passed = Math.max(passed, before - asked);
  }
  return passed;
}
