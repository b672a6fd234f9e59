import { addDays, type PlainDate } from '@/lib/quantities/plainDate';

/**
 * The year two digits stand for: within 50 years ahead and 49 back of the current one.
 * `d = YY − current YY`: 51 or more is the previous century, −50 or less the next, otherwise this one.
 *
 * Source: GS1 General Specifications, determination of the century in dates.
 */
export function slidingYear(twoDigits: number, currentYear: number): number {
  const century = currentYear - (currentYear % 100);
  const distance = twoDigits - (currentYear % 100);
  if (distance >= 51) return century - 100 + twoDigits;
  if (distance <= -50) return century + 100 + twoDigits;
  return century + twoDigits;
}

export const daysInMonth = (year: number, month: number): number =>
  new Date(Date.UTC(year, month, 0)).getUTCDate();

export const daysInYear = (year: number): number => (daysInMonth(year, 2) === 29 ? 366 : 365);

/** What of a date does not exist; `most` is the last one there is. */
export type DateFault =
  | { part: 'month'; given: number }
  | { part: 'day'; given: number; year: number; month: number; most: number }
  | { part: 'dayOfYear'; given: number; year: number; most: number };

export type ReadDate = { ok: true; date: PlainDate } | { ok: false; fault: DateFault };

/**
 * A date of its parts. `dayMayBeZero`: day 0 is the last day of the month, as GS1 dates have it where only the month is
 * stated.
 */
export function dateOf(year: number, month: number, day: number, dayMayBeZero = false): ReadDate {
  if (month < 1 || month > 12) return { ok: false, fault: { part: 'month', given: month } };
  const most = daysInMonth(year, month);
  const meant = day === 0 && dayMayBeZero ? most : day;
  if (meant < 1 || meant > most) {
    return { ok: false, fault: { part: 'day', given: day, year, month, most } };
  }
  return { ok: true, date: `${year}-${twoFigures(month)}-${twoFigures(meant)}` as PlainDate };
}

/** A date of its year and the day of that year, 1 January being 1. */
export function dateOfDayOfYear(year: number, day: number): ReadDate {
  const most = daysInYear(year);
  if (day < 1 || day > most) return { ok: false, fault: { part: 'dayOfYear', given: day, year, most } };
  return { ok: true, date: addDays(`${year}-01-01` as PlainDate, day - 1) };
}

const twoFigures = (number: number): string => String(number).padStart(2, '0');
