import { momentOfSerial } from '../../lists/serial';
import { type PlainDate, plainDate } from '../../quantities/plainDate';
import type { CellValue } from './table';

/** A time of day, a day with a time of day, or a moment that names its own offset. */
export type TimeRead =
  | { kind: 'time'; minute: number }
  | { kind: 'local'; date: PlainDate; minute: number }
  | { kind: 'instant'; at: string };

const CLOCK = /^(\d{1,2}):(\d{2})(?::00(?:[.,]0+)?)?\s*([ap]\.?m\.?)?$/i;
const FOUR_DIGITS = /^([01]\d|2[0-3])([0-5]\d)$/;
const LOCAL = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}):(\d{2})(?::00(?:\.0+)?)?$/;
const INSTANT = /^\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:Z|[+-]\d{2}:?\d{2})$/i;

/** A time as a cell has it; `null` where it is none, or no whole minute. */
export function readTime(value: CellValue): TimeRead | null {
  if (value === null) return null;
  if (typeof value === 'number') {
    const moment = momentOfSerial(value);
    if (moment === null) return null;
    const { date, minute } = moment;
    return date === null ? { kind: 'time', minute } : { kind: 'local', date, minute };
  }
  const text = value.trim();
  const clock = CLOCK.exec(text);
  if (clock) return clockTime(Number(clock[1]), Number(clock[2]), clock[3]);
  const four = FOUR_DIGITS.exec(text);
  if (four) return { kind: 'time', minute: Number(four[1]) * 60 + Number(four[2]) };
  const local = LOCAL.exec(text);
  if (local) {
    const date = plainDate.safeParse(local[1]);
    const time = clockTime(Number(local[2]), Number(local[3]), undefined);
    return date.success && time ? { kind: 'local', date: date.data, minute: time.minute } : null;
  }
  if (!INSTANT.test(text)) return null;
  const ms = Date.parse(text.replace(' ', 'T').replace(/([+-]\d{2})(\d{2})$/, '$1:$2'));
  if (Number.isNaN(ms) || ms % 60_000 !== 0) return null;
  return { kind: 'instant', at: new Date(ms).toISOString() };
}

function clockTime(hour: number, minute: number, half: string | undefined) {
  if (minute > 59) return null;
  if (half === undefined) return hour > 23 ? null : { kind: 'time' as const, minute: hour * 60 + minute };
  if (hour < 1 || hour > 12) return null;
  const afternoon = half.toLowerCase().startsWith('p');
  return { kind: 'time' as const, minute: ((hour % 12) + (afternoon ? 12 : 0)) * 60 + minute };
}

/** `08:30` of a minute of the day. */
export const clockOf = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
