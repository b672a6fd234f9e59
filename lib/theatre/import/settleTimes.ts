import { type DateOrder, readDate } from '../../lists/dates';
import { momentOfSerial } from '../../lists/serial';
import { addDays, type PlainDate } from '../../quantities/plainDate';
import type { ImportRemark } from './faults';
import type { ImportField } from './fields';
import type { RowChoices, Wrong } from './settle';
import type { StatedRow } from './table';
import { readTime, type TimeRead } from './times';
import type { WallTimes } from './wallTime';

const LEAST_MINUTES = 10;
const MOST_MINUTES = 24 * 60;
/** A theatre list lies within a year or so of today: what lies further off is another kind of date. */
const MOST_DAYS_OFF = 400;

interface Times {
  startsAt: string | null;
  endsAt: string | null;
}

interface Settling {
  stated: StatedRow<ImportField>;
  wall: WallTimes;
  choices: RowChoices;
  wrong: Wrong;
  remarks: ImportRemark[];
}

/**
 * When a row says its case is, as instants. Wall times are the hospital's: a time in a skipped hour is none, and of an
 * hour that comes twice a person must have said which. An end before its start is on the next day.
 */
export function settleTimes(
  stated: StatedRow<ImportField>,
  { wall, today }: { wall: WallTimes; today: PlainDate },
  choices: RowChoices,
  wrong: Wrong,
  remarks: ImportRemark[],
): Times {
  const none = { startsAt: null, endsAt: null };
  const settling = { stated, wall, choices, wrong, remarks };
  const day = dateOf(stated, choices.dateOrder, wrong);
  const start = day.time ?? timeOf(settling, 'start');
  const minutes = minutesOf(settling);
  const end = timeOf(settling, 'end');
  const saysWhen = (['date', 'end', 'minutes'] as const).some((field) => stated.cells[field] !== undefined);
  if (start === null) {
    if (saysWhen && stated.cells.start === undefined) {
      if (stated.cells.date === undefined) wrong('date', { code: 'needed' });
      wrong('start', { code: 'needed' });
    }
    return none;
  }
  if (start.kind === 'time' && day.date === null) {
    if (stated.cells.date === undefined) wrong('date', { code: 'needed' });
    return none;
  }
  if (start.kind === 'local' && day.date !== null && day.date !== start.date) {
    wrong('date', { code: 'date-twice' });
    return none;
  }
  const startsAt = instant(settling, 'start', start, day.date);
  if (startsAt === null) return none;
  const startDay = start.kind === 'local' ? start.date : (day.date ?? (startsAt.slice(0, 10) as PlainDate));
  if (startDay < addDays(today, -MOST_DAYS_OFF) || startDay > addDays(today, MOST_DAYS_OFF)) {
    wrong(stated.cells.date === undefined ? 'start' : 'date', { code: 'date-far-off' });
    return none;
  }
  const byMinutes = minutes === null ? null : later(startsAt, minutes);
  const endsAt = end === null ? byMinutes : endOf(settling, end, { start, startsAt, startDay, byMinutes });
  if (endsAt === null) return { startsAt, endsAt: null };
  const length = (Date.parse(endsAt) - Date.parse(startsAt)) / 60_000;
  if (length <= 0) wrong('end', { code: 'end-not-after-start' });
  else if (length < LEAST_MINUTES || length > MOST_MINUTES)
    wrong(end === null ? 'minutes' : 'end', { code: 'minutes-out-of-range' });
  else if (byMinutes !== null && byMinutes !== endsAt)
    wrong('minutes', { code: 'end-and-minutes-differ', minutes: length });
  else return { startsAt, endsAt };
  return { startsAt, endsAt: null };
}

const later = (at: string, minutes: number) => new Date(Date.parse(at) + minutes * 60_000).toISOString();

/** The day a row names; a day with a time of its own, as some spreadsheets keep it, is the start as well. */
function dateOf(
  { cells }: StatedRow<ImportField>,
  order: DateOrder | 'mixed' | null,
  wrong: Wrong,
): { date: PlainDate | null; time: TimeRead | null } {
  const none = { date: null, time: null };
  const value = cells.date?.value ?? null;
  if (value === null) return none;
  const moment = typeof value === 'number' ? momentOfSerial(value) : localOf(value);
  if (moment !== null && moment.date !== null) {
    if (moment.minute === 0) return { date: moment.date, time: null };
    if (cells.start === undefined)
      return { date: moment.date, time: { kind: 'local', date: moment.date, minute: moment.minute } };
  }
  if (typeof value === 'number' || moment !== null) {
    wrong('date', { code: 'not-a-date' });
    return none;
  }
  const read = readDate(value, order);
  if (read.ok) return { date: read.date, time: null };
  wrong('date', { code: DATE_FAULTS[read.why] });
  return none;
}

const DATE_FAULTS = {
  notADate: 'not-a-date',
  noSuchDay: 'no-such-day',
  eitherOrder: 'date-either-order',
  otherOrder: 'date-other-order',
} as const;

function localOf(text: string): { date: PlainDate; minute: number } | null {
  const read = readTime(text);
  return read?.kind === 'local' ? read : null;
}

function timeOf({ stated, wrong }: Settling, field: 'start' | 'end'): TimeRead | null {
  const cell = stated.cells[field];
  if (cell === undefined) return null;
  const read = readTime(cell.value);
  if (read === null) wrong(field, { code: 'not-a-time' });
  return read;
}

function minutesOf({ stated, wrong }: Settling): number | null {
  const value = stated.cells.minutes?.value ?? null;
  if (value === null) return null;
  const minutes = typeof value === 'number' ? value : /^\d{1,5}$/.test(value) ? Number(value) : Number.NaN;
  if (!Number.isInteger(minutes)) wrong('minutes', { code: 'not-minutes' });
  else if (minutes < LEAST_MINUTES || minutes > MOST_MINUTES)
    wrong('minutes', { code: 'minutes-out-of-range' });
  else return minutes;
  return null;
}

/** The instant of a time that was read; skipped and repeated hours are said. */
function instant(
  { wall, choices, wrong, remarks }: Settling,
  field: 'start' | 'end',
  time: TimeRead,
  date: PlainDate | null,
  wanted: string | null = null,
): string | null {
  if (time.kind === 'instant') return time.at;
  const day = time.kind === 'local' ? time.date : date;
  if (day === null) return null;
  const all = wall.instantsOf(day, time.minute);
  const [first, second] = all;
  if (first === undefined) wrong(field, { code: 'time-skipped' });
  if (first === undefined || second === undefined) return first ?? null;
  if (wanted !== null && all.includes(wanted)) return wanted;
  if (choices.repeatedHour === null) {
    wrong(field, { code: 'time-repeated' });
    return null;
  }
  remarks.push({ code: 'repeated-hour', chosen: choices.repeatedHour });
  return choices.repeatedHour === 'first' ? first : second;
}

function endOf(
  settling: Settling,
  end: TimeRead,
  {
    start,
    startsAt,
    startDay,
    byMinutes,
  }: { start: TimeRead; startsAt: string; startDay: PlainDate; byMinutes: string | null },
): string | null {
  if (end.kind !== 'time') return instant(settling, 'end', end, null, byMinutes);
  if (start.kind === 'instant') {
    // a moment with an offset of its own has no day at the hospital that a bare time could follow
    settling.wrong('end', { code: 'not-a-time' });
    return null;
  }
  if (end.minute === start.minute) {
    settling.wrong('end', { code: 'end-not-after-start' });
    return null;
  }
  const sameDay = settling.wall.instantsOf(startDay, end.minute);
  const following = sameDay.filter((at) => at > startsAt);
  // where the clocks go back before the end, it is the one of the two that follows the start
  if (sameDay.length === 2 && following.length === 1) return following[0] ?? null;
  const overnight = end.minute < start.minute && following.length === 0;
  if (overnight) settling.remarks.push({ code: 'past-midnight' });
  return instant(settling, 'end', end, overnight ? addDays(startDay, 1) : startDay, byMinutes);
}
