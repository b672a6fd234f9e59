import { groupBy } from '@/lib/lists/groupBy';
import type { CaseSize } from './demandModel';

/** What one case took of an item for good: implanted, wasted, or not found afterwards. */
export interface Use {
  /** Days since the record began: 0 on its first day. */
  day: number;
  pieces: number;
  /** How long before that day the case was booked; `null` where nobody knows. */
  bookedDaysBefore: number | null;
}

export interface UseRecord {
  /** Days it goes over, those without a use too. */
  days: number;
  uses: readonly Use[];
}

/** Sums of `value` in whole periods that end with the record; what lies before the first whole one is left out. */
export function inPeriods(
  { days, uses }: UseRecord,
  periodDays: number,
  value: (use: Use) => number = ({ pieces }) => pieces,
): number[] {
  const periods = Array.from({ length: Math.floor(days / periodDays) }, () => 0);
  const first = days - periods.length * periodDays;
  for (const use of uses) {
    const at = Math.floor((use.day - first) / periodDays);
    if (use.day >= first) periods[at] = (periods[at] ?? 0) + value(use);
  }
  return periods;
}

/** How many pieces cases take, and how often; fewest first. */
export function sizesOf(uses: readonly Use[]): CaseSize[] {
  return [...groupBy(uses, ({ pieces }) => pieces)]
    .map(([pieces, alike]) => ({ pieces, share: alike.length / uses.length }))
    .sort((a, b) => a.pieces - b.pieces);
}

/**
 * The share of the demand of the next `coverDays` days that nobody has booked yet. A case known `b` days before is booked
 * already when it falls on one of the first `b` of those days; one of which that is not known counts as not booked. 1
 * where there are no uses.
 */
export function unbookedShare(uses: readonly Use[], coverDays: number): number {
  let pieces = 0;
  let unbooked = 0;
  for (const use of uses) {
    pieces += use.pieces;
    unbooked += use.pieces * (Math.max(0, coverDays - (use.bookedDaysBefore ?? 0)) / coverDays);
  }
  return pieces === 0 ? 1 : unbooked / pieces;
}
