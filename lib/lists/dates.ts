import { type PlainDate, plainDate } from '../quantities/plainDate';

/** Which comes first in a date such as 03/04/2026. */
export type DateOrder = 'dayFirst' | 'monthFirst';

export type DateRead =
  | { ok: true; date: PlainDate }
  | { ok: false; why: 'notADate' | 'noSuchDay' | 'eitherOrder' | 'otherOrder' };

const ISO = /^(\d{4})-(\d{1,2})-(\d{1,2})$/;
const SLASHES = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$/;
/** Dots stand between day, month and year in that order wherever they are used. */
const DOTS = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/;
const NAMED = /^(?:[a-z]+,?\s+)?(\d{1,2})(?:st|nd|rd|th)?[\s-]+([a-z]{3,9})\.?,?[\s-]+(\d{4})$/i;
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const FULL_MONTHS =
  /^(jan(uary)?|feb(ruary)?|mar(ch)?|apr(il)?|may|june?|july?|aug(ust)?|sept?(ember)?|oct(ober)?|nov(ember)?|dec(ember)?)$/i;

/**
 * The order of a file's dates from all of them: a day past the twelfth tells. `null` where none does, `mixed` where two
 * contradict each other.
 */
export function dateOrderOf(cells: readonly string[]): DateOrder | 'mixed' | null {
  const seen = new Set(cells.map((cell) => orderOf(cell.trim())).filter((order) => order !== null));
  if (seen.size > 1) return 'mixed';
  return [...seen][0] ?? null;
}

function orderOf(cell: string): DateOrder | null {
  const found = SLASHES.exec(cell);
  if (!found) return null;
  const [first, second] = [Number(found[1]), Number(found[2])];
  if (first > 12 && second <= 12) return 'dayFirst';
  if (second > 12 && first <= 12) return 'monthFirst';
  return null;
}

/** A date as a text writes it. Where it could be either of two days, the order must be known; none is guessed. */
export function readDate(cell: string, order: DateOrder | 'mixed' | null): DateRead {
  const iso = ISO.exec(cell);
  if (iso) return day(iso[1], iso[2], iso[3]);
  const dotted = DOTS.exec(cell);
  if (dotted) return day(dotted[3], dotted[2], dotted[1]);
  const named = NAMED.exec(cell);
  if (named && FULL_MONTHS.test(named[2] ?? '')) {
    const month = MONTHS.indexOf((named[2] ?? '').slice(0, 3).toLowerCase()) + 1;
    return day(named[3], String(month), named[1]);
  }
  const slashed = SLASHES.exec(cell);
  if (!slashed) return { ok: false, why: 'notADate' };
  const own = orderOf(cell);
  if (order === 'mixed' || (own !== null && order !== null && own !== order))
    return { ok: false, why: 'otherOrder' };
  // the same number twice is one day either way
  const known = order ?? own ?? (slashed[1] === slashed[2] ? 'dayFirst' : null);
  if (known === null) return { ok: false, why: 'eitherOrder' };
  const [d, m] = known === 'dayFirst' ? [slashed[1], slashed[2]] : [slashed[2], slashed[1]];
  return day(slashed[3], m, d);
}

function day(year = '', month = '', date = ''): DateRead {
  const parsed = plainDate.safeParse(`${year}-${month.padStart(2, '0')}-${date.padStart(2, '0')}`);
  return parsed.success ? { ok: true, date: parsed.data } : { ok: false, why: 'noSuchDay' };
}
