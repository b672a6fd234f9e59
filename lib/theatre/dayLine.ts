import type { PlainDate } from '../quantities/plainDate';
import { addDays } from '../quantities/plainDate';
import { startOfDay, wallOfInstant } from '../time/zone';
import { HOSPITAL_ZONE, instantOf } from './localTime';

const QUARTER_MS = 15 * 60_000;
const [FIRST_HOUR, LAST_HOUR] = ['07:00', '19:00'];

/** The stretch of time a day's line shows, with its hours as the clock on the wall says them. */
export interface DayLine {
  fromMs: number;
  toMs: number;
  hours: { atMs: number; label: string }[];
}

/**
 * What the line of a day shows: the working day, and as much more as what lies on it needs, in whole hours of the clock on the
 * wall. Over a change of the clocks an hour is left out or comes twice, as it does on the wall.
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
  const [dawn, end] = [startOfDay(date, zone), startOfDay(addDays(date, 1), zone)];
  // what began the day before or ends the day after is cut off at midnight
  const from = Math.max(dawn, Math.min(...times(starts)));
  const to = Math.min(end, Math.max(...times(ends)));
  const hours = wholeHours(dawn, end, zone);
  const fromMs = hours.findLast(({ atMs }) => atMs <= from)?.atMs ?? dawn;
  const toMs = hours.find(({ atMs }) => atMs >= to)?.atMs ?? end;
  return { fromMs, toMs, hours: hours.filter(({ atMs }) => atMs >= fromMs && atMs <= toMs) };
}

/** Each instant of a day, its end included, when the clock on the wall shows a full hour; no zone is off by less than a quarter. */
function wholeHours(dawn: number, end: number, zone: string): DayLine['hours'] {
  const hours: DayLine['hours'] = [];
  for (let atMs = dawn; atMs <= end; atMs += QUARTER_MS) {
    const { time } = wallOfInstant(atMs, zone);
    if (time.endsWith(':00')) hours.push({ atMs, label: time });
  }
  return hours;
}

const times = (instants: readonly (string | null)[]): number[] =>
  instants.flatMap((at) => (at === null ? [] : [Date.parse(at)]));
