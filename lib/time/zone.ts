import { Temporal } from 'temporal-polyfill';
import { z } from 'zod';
import type { PlainDate } from '../quantities/plainDate';

/** A time zone by its name in the IANA time zone database, such as `Europe/London`. */
export const timeZone = z
  .string()
  .min(1)
  .max(60)
  .refine(isTimeZone, 'a time zone by its name in the IANA database, such as Europe/London');

/** A time of day on the wall, `HH:MM`, 24 hours. */
export const timeOfDay = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time as HH:MM, such as 08:30');

/** What calendar and clock on the wall show. */
export interface WallTime {
  date: PlainDate;
  /** `HH:MM`, or `HH:MM:SS`. */
  time: string;
}

/**
 * What to do with the two kinds of wall time that are not one instant. A time that the clocks skip in spring is refused, or
 * moved on by as much as they skip (02:30 becomes 03:30). Of a time that comes twice in autumn, the first or the second.
 */
export interface HardTimes {
  skipped: 'refuse' | 'moveOn';
  repeated: 'first' | 'second';
}

export type InstantOfWall =
  | { kind: 'instant'; ms: number; was: 'once' | 'skipped' | 'repeated' }
  /** The clocks skip this time on that day. */
  | { kind: 'skipped' };

/** The instant when the wall shows this; which of the two hard cases it was is said. */
export function instantOfWall({ date, time }: WallTime, zone: string, hard: HardTimes): InstantOfWall {
  const plain = Temporal.PlainDateTime.from(`${date}T${time}`);
  const first = plain.toZonedDateTime(zone, { disambiguation: 'earlier' });
  const second = plain.toZonedDateTime(zone, { disambiguation: 'later' });
  if (first.epochMilliseconds === second.epochMilliseconds)
    return { kind: 'instant', ms: first.epochMilliseconds, was: 'once' };
  // of a skipped time, neither shows it: the earlier lies before the gap and the later after it
  const isSkipped = !first.toPlainDateTime().equals(plain);
  if (isSkipped)
    return hard.skipped === 'refuse'
      ? { kind: 'skipped' }
      : { kind: 'instant', ms: second.epochMilliseconds, was: 'skipped' };
  const chosen = hard.repeated === 'first' ? first : second;
  return { kind: 'instant', ms: chosen.epochMilliseconds, was: 'repeated' };
}

/** What the wall shows at an instant, to the second where it is not a whole minute. */
export function wallOfInstant(ms: number, zone: string): WallTime {
  const zoned = zonedAt(ms, zone);
  const smallestUnit = zoned.second === 0 ? 'minute' : 'second';
  return {
    date: zoned.toPlainDate().toString() as PlainDate,
    time: zoned.toPlainTime().toString({ smallestUnit }),
  };
}

/** The instant as text with its offset, `2026-03-29T02:30:00+01:00` (RFC 3339): of a repeated hour it says which. */
export function writtenInstant(ms: number, zone: string): string {
  return zonedAt(ms, zone).toString({ timeZoneName: 'never', smallestUnit: 'second' });
}

/** When a day begins: mostly at midnight, later where the clocks skip it. The day before ends at this instant. */
export function startOfDay(date: PlainDate, zone: string): number {
  return Temporal.PlainDate.from(date).toZonedDateTime(zone).startOfDay().epochMilliseconds;
}

/** 1 for Monday to 7 for Sunday (ISO 8601). */
export function weekdayOf(date: PlainDate): number {
  return Temporal.PlainDate.from(date).dayOfWeek;
}

function zonedAt(ms: number, zone: string): Temporal.ZonedDateTime {
  return Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone);
}

function isTimeZone(name: string): boolean {
  try {
    zonedAt(0, name);
    return !/^[+-]/.test(name);
  } catch {
    return false;
  }
}
