import type { PlainDate } from '../quantities/plainDate';
import { addDays } from '../quantities/plainDate';
import { HOSPITAL_ZONE, instantOf, wallClock } from './localTime';

const HOUR_MS = 3_600_000;
const [FIRST_HOUR, LAST_HOUR] = ['07:00', '19:00'];

/** The stretch of time a day's line shows, with its hours as the clock on the wall says them. */
export interface DayLine {
  fromMs: number;
  toMs: number;
  hours: { atMs: number; label: string }[];
}

/**
 * What the line of a day shows: the working day, and as much more as what lies on it needs, in whole hours. Over a change of
 * the clocks an hour is left out or comes twice, as it does on the wall.
 *
 * @param spans what must be seen, as ISO instants
 */
export function dayLine(
  date: PlainDate,
  spans: readonly { fromAt: string; untilAt: string }[],
  zone: string = HOSPITAL_ZONE,
): DayLine {
  const starts = [instantOf(date, FIRST_HOUR, zone), ...spans.map(({ fromAt }) => fromAt)];
  const ends = [instantOf(date, LAST_HOUR, zone), ...spans.map(({ untilAt }) => untilAt)];
  const [dawn, end] = [startOf(date, zone), startOf(addDays(date, 1), zone)];
  // what began the day before or ends the day after is cut off at midnight
  const fromMs = Math.max(dawn, Math.min(...times(starts)));
  const toMs = Math.min(end, Math.max(...times(ends)));
  const whole = {
    fromMs: Math.floor(fromMs / HOUR_MS) * HOUR_MS,
    toMs: Math.ceil(toMs / HOUR_MS) * HOUR_MS,
  };
  const hours: DayLine['hours'] = [];
  for (let atMs = whole.fromMs; atMs <= whole.toMs; atMs += HOUR_MS)
    hours.push({ atMs, label: wallClock(new Date(atMs).toISOString(), zone).time });
  return { ...whole, hours };
}

/** The first instant of a day; where midnight itself is skipped, the first that there is. */
function startOf(date: PlainDate, zone: string): number {
  for (const time of ['00:00', '00:30', '01:00']) {
    const at = instantOf(date, time, zone);
    if (at !== null) return Date.parse(at);
  }
  throw new RangeError(`${date} has no beginning in ${zone}`);
}

const times = (instants: readonly (string | null)[]): number[] =>
  instants.flatMap((at) => (at === null ? [] : [Date.parse(at)]));
