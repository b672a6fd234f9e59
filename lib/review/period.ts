import { addDays, type PlainDate } from '../quantities/plainDate';

/** How far back a review or a report looks, in months. */
export const PERIOD_MONTHS = [3, 12, 24, 60] as const;
export type PeriodMonths = (typeof PERIOD_MONTHS)[number];

/** What an address asks for; anything else is two years. */
export function askedMonths(asked: string | string[] | undefined): PeriodMonths {
  return PERIOD_MONTHS.find((months) => String(months) === asked) ?? 24;
}

/** From the day after the same day so many months ago until today; both in it. */
export function periodUntil(today: PlainDate, months: PeriodMonths): { from: PlainDate; until: PlainDate } {
  return { from: addDays(today, 1 - Math.round((months * 365.25) / 12)), until: today };
}
