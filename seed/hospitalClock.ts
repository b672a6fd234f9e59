import { addDays, type PlainDate, plainDate } from '@/lib/quantities/plainDate';

const ZONE = 'Europe/London';
const MINUTE = 60_000;

/** Turns "two days from now at 08:30" into instants and dates, as a clock on the hospital's wall would show them. */
export class HospitalClock {
  readonly now: Date;
  readonly today: PlainDate;

  constructor(now: Date) {
    this.now = now;
    this.today = localDate(now);
  }

  date(daysFromToday: number): PlainDate {
    return addDays(this.today, daysFromToday);
  }

  /** `at(1, '08:30')`: tomorrow at half past eight by the wall clock, as an ISO instant. */
  at(daysFromToday: number, time: `${number}:${number}`): string {
    const date = this.date(daysFromToday);
    const asIfUtc = Date.parse(`${date}T${time}:00Z`);
    // the offset may change between the guess and the answer, so it is read again at the answer
    const guess = asIfUtc - offsetMs(new Date(asIfUtc));
    return new Date(asIfUtc - offsetMs(new Date(guess))).toISOString();
  }

  /** Minutes from now, to the next five. Negative for the past. */
  minutesFromNow(minutes: number): string {
    const exact = this.now.getTime() + minutes * MINUTE;
    return new Date(Math.ceil(exact / (5 * MINUTE)) * 5 * MINUTE).toISOString();
  }
}

const wallClock = new Intl.DateTimeFormat('en-CA', {
  timeZone: ZONE,
  hourCycle: 'h23',
  year: 'numeric',
  month: '2-digit',
  day: '2-digit',
  hour: '2-digit',
  minute: '2-digit',
  second: '2-digit',
});

function wallParts(instant: Date): Record<string, string> {
  return Object.fromEntries(wallClock.formatToParts(instant).map(({ type, value }) => [type, value]));
}

/** The hospital's calendar date at an instant. */
export function localDate(instant: Date): PlainDate {
  const { year, month, day } = wallParts(instant);
  return plainDate.parse(`${year}-${month}-${day}`);
}

function offsetMs(instant: Date): number {
  const { year, month, day, hour, minute, second } = wallParts(instant);
  return (
    Date.parse(`${year}-${month}-${day}T${hour}:${minute}:${second}Z`) -
    Math.trunc(instant.getTime() / 1000) * 1000
  );
}
