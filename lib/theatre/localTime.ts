import { type PlainDate, plainDate } from '../quantities/plainDate';

/** The hospital's own time zone, until a setting says another. */
export const HOSPITAL_ZONE = 'Europe/London';

interface WallClock {
  date: PlainDate;
  /** `HH:MM`, 24 hours. */
  time: string;
}

/** What clock and calendar on the wall show at an instant. */
export function wallClock(instant: string, zone: string = HOSPITAL_ZONE): WallClock {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(new Date(instant));
  const part = (type: string) => parts.find((one) => one.type === type)?.value ?? '';
  return {
    date: plainDate.parse(`${part('year')}-${part('month')}-${part('day')}`),
    time: `${part('hour')}:${part('minute')}`,
  };
}

/**
 * The instant when clock and calendar show this date and time, or `null` where they never do (the hour skipped in
 * spring). Of an hour that comes twice in autumn, the first.
 */
export function instantOf(date: PlainDate, time: string, zone: string = HOSPITAL_ZONE): string | null {
  const asUtc = Date.parse(`${date}T${time}:00Z`);
  if (Number.isNaN(asUtc)) return null;
  const candidates = [-14, -1, 0, 1, 14].map((hours) => offsetMs(asUtc + hours * 3_600_000, zone));
  const instants = [...new Set(candidates)].map((offset) => asUtc - offset).sort((a, b) => a - b);
  for (const ms of instants) {
    const shown = wallClock(new Date(ms).toISOString(), zone);
    if (shown.date === date && shown.time === time) return new Date(ms).toISOString();
  }
  return null;
}

function offsetMs(ms: number, zone: string): number {
  const { date, time } = wallClock(new Date(ms).toISOString(), zone);
  return Date.parse(`${date}T${time}:00Z`) - Math.floor(ms / 60_000) * 60_000;
}

/** `Wednesday 14 January`, for headings. */
export function dayWords(date: PlainDate): string {
  return new Intl.DateTimeFormat('en-GB', {
    timeZone: 'UTC',
    weekday: 'long',
    day: 'numeric',
    month: 'long',
  }).format(new Date(`${date}T12:00:00Z`));
}
