import { z } from 'zod';
import { addDays, type PlainDate, plainDate } from '../quantities/plainDate';
import { instantOfWall, startOfDay, timeOfDay, wallOfInstant, weekdayOf } from './zone';

/** `24:00` is the end of the day. */
const endOfWork = timeOfDay.or(z.literal('24:00'));

const stretchesOfDay = z
  .array(z.strictObject({ from: timeOfDay, to: endOfWork }))
  .max(6)
  .refine(
    (stretches) =>
      stretches.every(({ from, to }, at) => from < to && (stretches[at - 1]?.to ?? '00:00') <= from),
    'stretches in the order of the day, each ending after it begins and none within another',
  );

/** When people work: by day of the week, but for holidays. */
export const workingHours = z.strictObject({
  week: z.strictObject({
    monday: stretchesOfDay,
    tuesday: stretchesOfDay,
    wednesday: stretchesOfDay,
    thursday: stretchesOfDay,
    friday: stretchesOfDay,
    saturday: stretchesOfDay,
    sunday: stretchesOfDay,
  }),
  /** Days on which nobody works, whatever day of the week. */
  holidays: z.array(plainDate).max(400),
});
export type WorkingHours = z.output<typeof workingHours>;

interface Stretch {
  fromMs: number;
  toMs: number;
}

const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;

/** Days without work are looked through this far; a longer pause is taken as no work at all. */
const MOST_DAYS = 800;

/**
 * The working stretches of a day as instants, half open. They last as long as they do: where the clocks change in one of
 * them it is longer or shorter than the wall says. An end that the clocks skip is moved on; of one that comes twice it
 * is the first.
 */
export function workOf(date: PlainDate, { week, holidays }: WorkingHours, zone: string): Stretch[] {
  if (holidays.includes(date)) return [];
  const weekday = WEEKDAYS[weekdayOf(date) - 1] as (typeof WEEKDAYS)[number];
  return week[weekday]
    .map(({ from, to }) => ({ fromMs: at(date, from, zone), toMs: at(date, to, zone) }))
    .filter(({ fromMs, toMs }) => fromMs < toMs);
}

/** Milliseconds of work between two instants; negative where the second comes first. */
export function workBetween(fromMs: number, toMs: number, hours: WorkingHours, zone: string): number {
  if (toMs < fromMs) return -workBetween(toMs, fromMs, hours, zone);
  const last = wallOfInstant(toMs, zone).date;
  let sum = 0;
  for (let date = wallOfInstant(fromMs, zone).date; date <= last; date = addDays(date, 1)) {
    for (const stretch of workOf(date, hours, zone))
      sum += Math.max(0, Math.min(toMs, stretch.toMs) - Math.max(fromMs, stretch.fromMs));
  }
  return sum;
}

/**
 * The latest instant from which this much work is done until then; `null` where there is no work to count back over.
 *
 * @param workMs 0 or more
 */
export function beforeByWork(
  untilMs: number,
  workMs: number,
  hours: WorkingHours,
  zone: string,
): number | null {
  if (workMs === 0) return untilMs;
  let left = workMs;
  let date = wallOfInstant(untilMs, zone).date;
  for (let day = 0; day <= MOST_DAYS; day += 1, date = addDays(date, -1)) {
    for (const { fromMs, toMs } of workOf(date, hours, zone).reverse()) {
      const there = Math.max(0, Math.min(untilMs, toMs) - fromMs);
      if (there >= left) return Math.min(untilMs, toMs) - left;
      left -= there;
    }
  }
  return null;
}

/**
 * The earliest instant by which this much work is done from then on; `null` where there is no work to come.
 *
 * @param workMs 0 or more
 */
export function afterByWork(
  fromMs: number,
  workMs: number,
  hours: WorkingHours,
  zone: string,
): number | null {
  if (workMs === 0) return fromMs;
  let left = workMs;
  let date = wallOfInstant(fromMs, zone).date;
  for (let day = 0; day <= MOST_DAYS; day += 1, date = addDays(date, 1)) {
    for (const stretch of workOf(date, hours, zone)) {
      const begin = Math.max(fromMs, stretch.fromMs);
      const there = Math.max(0, stretch.toMs - begin);
      if (there >= left) return begin + left;
      left -= there;
    }
  }
  return null;
}

/** The working day that lies this many working days before the date; `null` where there is none. */
export function workingDayBefore(
  date: PlainDate,
  days: number,
  hours: WorkingHours,
  zone: string,
): PlainDate | null {
  let left = days;
  for (let back = 1; back <= MOST_DAYS; back += 1) {
    const day = addDays(date, -back);
    if (workOf(day, hours, zone).length > 0) left -= 1;
    if (left === 0) return day;
  }
  return null;
}

function at(date: PlainDate, time: string, zone: string): number {
  if (time === '24:00') return startOfDay(addDays(date, 1), zone);
  const found = instantOfWall({ date, time }, zone, { skipped: 'moveOn', repeated: 'first' });
  if (found.kind !== 'instant') throw new Error('a skipped time is moved on');
  return found.ms;
}
