import { z } from 'zod';

/** A calendar date with no time and no zone, `YYYY-MM-DD`. Use-by dates are of this kind. */
export const plainDate = z.iso.date('a date as YYYY-MM-DD').brand<'PlainDate'>();
export type PlainDate = z.infer<typeof plainDate>;

/** Use-by is tested against the case date: good through the day printed, past it the day after. */
export function isPastUseBy(useBy: PlainDate, caseDate: PlainDate): boolean {
  // ISO dates of four-digit years compare as text
  return useBy < caseDate;
}

const FIRST = '0000-01-01' as PlainDate;
const LAST = '9999-12-31' as PlainDate;

/**
 * The date `days` later (or earlier, when negative), by the Gregorian calendar. Past what four figures of a year can say, the
 * last (or first) day that they can.
 */
export function addDays(date: PlainDate, days: number): PlainDate {
  const then = new Date(0);
  // not by `Date.UTC`, which takes the years to 99 for those of the last century
  then.setUTCFullYear(
    Number(date.slice(0, 4)),
    Number(date.slice(5, 7)) - 1,
    Number(date.slice(8, 10)) + days,
  );
  const year = then.getUTCFullYear();
  if (year >= 0 && year <= 9999) return then.toISOString().slice(0, 10) as PlainDate;
  return days > 0 ? LAST : FIRST;
}
