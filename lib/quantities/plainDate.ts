import { z } from 'zod';

/** A calendar date with no time and no zone, `YYYY-MM-DD`. Use-by dates are of this kind. */
export const plainDate = z.iso.date('a date as YYYY-MM-DD').brand<'PlainDate'>();
export type PlainDate = z.infer<typeof plainDate>;

/** Use-by is tested against the case date: good through the day printed, past it the day after. */
export function isPastUseBy(useBy: PlainDate, caseDate: PlainDate): boolean {
  // ISO dates of four-digit years compare as text
  return useBy < caseDate;
}

/** The date `days` later (or earlier, when negative), by the Gregorian calendar. */
export function addDays(date: PlainDate, days: number): PlainDate {
  const ms = Date.UTC(
    Number(date.slice(0, 4)),
    Number(date.slice(5, 7)) - 1,
    Number(date.slice(8, 10)) + days,
  );
  return new Date(ms).toISOString().slice(0, 10) as PlainDate;
}
