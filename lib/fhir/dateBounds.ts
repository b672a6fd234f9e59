import { type PlainDate, plainDate } from '../quantities/plainDate';
import { HOSPITAL_ZONE } from '../theatre/localTime';
import { startOfDay } from '../time/zone';

/** Instants asked for: from `from` on and before `until`; `null` where there is no end. */
export interface DateBounds {
  from: string | null;
  until: string | null;
}

/**
 * `ge2026-01-14` as the instants it means (hl7.org/fhir/R5/search.html#date): a year, month or day is all of it, a day is the
 * hospital's, and an instant is the second it names unless it is finer. `null`: no such date.
 */
export function dateBounds(text: string): DateBounds | null {
  const [, prefix = 'eq', rest = ''] = /^(eq|ge|gt|le|lt)?(.+)$/.exec(text) ?? [];
  const span = spanOf(rest);
  if (span === null) return null;
  const [from, until] = span.map((ms) => new Date(ms).toISOString()) as [string, string];
  switch (prefix) {
    case 'ge':
      return { from, until: null };
    case 'gt':
      return { from: until, until: null };
    case 'lt':
      return { from: null, until: from };
    case 'le':
      return { from: null, until };
    default:
      return { from, until };
  }
}

/** From and before which millisecond. */
function spanOf(text: string): [number, number] | null {
  const [, year, month, day] = /^([1-9]\d{3})(?:-(\d\d)(?:-(\d\d))?)?$/.exec(text) ?? [];
  if (year === undefined) return instantSpan(text);
  const first = dayOf(Number(year), Number(month ?? 1), Number(day ?? 1));
  const next =
    day !== undefined
      ? dayOf(Number(year), Number(month), Number(day) + 1, true)
      : month !== undefined
        ? dayOf(Number(year), Number(month) + 1, 1, true)
        : dayOf(Number(year) + 1, 1, 1, true);
  return first && next && [startOfDay(first, HOSPITAL_ZONE), startOfDay(next, HOSPITAL_ZONE)];
}

/** A day of the calendar; `overflows`: the 32nd of a month is the first of the next. */
function dayOf(year: number, month: number, day: number, overflows = false): PlainDate | null {
  const moment = new Date(Date.UTC(year, month - 1, day));
  if (!overflows && (moment.getUTCMonth() !== month - 1 || moment.getUTCDate() !== day)) return null;
  const parsed = plainDate.safeParse(moment.toISOString().slice(0, 10));
  return parsed.success ? parsed.data : null;
}

const INSTANT = /^[1-9]\d{3}-\d\d-\d\dT\d\d:\d\d(?::\d\d(\.\d{1,3})?)?(?:Z|[+-]\d\d:\d\d)$/;

function instantSpan(text: string): [number, number] | null {
  const match = INSTANT.exec(text);
  const from = match ? Date.parse(text) : Number.NaN;
  if (Number.isNaN(from)) return null;
  const hasSeconds = /T\d\d:\d\d:\d\d/.test(text);
  return [from, from + (match?.[1] !== undefined ? 1 : hasSeconds ? 1_000 : 60_000)];
}
