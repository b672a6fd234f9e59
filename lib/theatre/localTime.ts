import { type PlainDate, plainDate } from '../quantities/plainDate';

/** The hospital's own time zone, until a setting says another. */
export const HOSPITAL_ZONE = 'Europe/London';

interface WallClock {
  date: PlainDate;
  /** `HH:MM`, 24 hours. */
  time: string;
}

const formats = new Map<string, Intl.DateTimeFormat>();

/** Lists tell the same instants again and again, and asking the calendar takes longer than all the rest of a line. */
const told = new Map<string, Readonly<WallClock>>();
const MOST_TOLD = 20_000;

/** What clock and calendar on the wall show at an instant. */
export function wallClock(instant: string, zone: string = HOSPITAL_ZONE): Readonly<WallClock> {
  const key = `${zone} ${instant}`;
  const before = told.get(key);
  if (before) return before;
  const shown = onTheWall(instant, zone);
  if (told.size >= MOST_TOLD) told.clear();
  told.set(key, shown);
  return shown;
}

function onTheWall(instant: string, zone: string): WallClock {
  const format = formats.get(zone) ?? wallFormat(zone);
  formats.set(zone, format);
  const parts = format.formatToParts(new Date(instant));
  const part = (type: string) => parts.find((one) => one.type === type)?.value ?? '';
  return {
    date: plainDate.parse(`${part('year')}-${part('month')}-${part('day')}`),
    time: `${part('hour')}:${part('minute')}`,
  };
}

const wallFormat = (zone: string) =>
  new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });

/** Which of the two, of a time that comes twice on the day the clocks go back. */
export type Which = 'first' | 'second';

/**
 * The instant when clock and calendar show this date and time, or `null` where they never do (the hour skipped in
 * spring). Of an hour that comes twice in autumn, the first unless the second is asked for.
 */
export function instantOf(
  date: PlainDate,
  time: string,
  zone: string = HOSPITAL_ZONE,
  which: Which = 'first',
): string | null {
  const instants = instantsOf(date, time, zone);
  return (which === 'first' ? instants[0] : instants.at(-1)) ?? null;
}

/** How often the clock shows this time on that day: mostly once. */
export function timesShown(
  date: PlainDate,
  time: string,
  zone: string = HOSPITAL_ZONE,
): 'never' | 'once' | 'twice' {
  const { length } = instantsOf(date, time, zone);
  return length === 0 ? 'never' : length === 1 ? 'once' : 'twice';
}

/** Which of the two an instant is, `null` where its time comes once only. */
export function whichOf(instant: string, zone: string = HOSPITAL_ZONE): Which | null {
  const { date, time } = wallClock(instant, zone);
  const [first, second] = instantsOf(date, time, zone);
  if (second === undefined) return null;
  return Date.parse(instant) < Date.parse(second) && first !== undefined ? 'first' : 'second';
}

/** Every instant when the wall shows this, in order: none, one or two. */
function instantsOf(date: PlainDate, time: string, zone: string): string[] {
  const asUtc = Date.parse(`${date}T${time}:00Z`);
  if (Number.isNaN(asUtc)) return [];
  const candidates = [-14, -1, 0, 1, 14].map((hours) => offsetMs(asUtc + hours * 3_600_000, zone));
  return [...new Set(candidates)]
    .map((offset) => asUtc - offset)
    .sort((a, b) => a - b)
    .map((ms) => new Date(ms).toISOString())
    .filter((instant) => {
      const shown = wallClock(instant, zone);
      return shown.date === date && shown.time === time;
    });
}

function offsetMs(ms: number, zone: string): number {
  const { date, time } = wallClock(new Date(ms).toISOString(), zone);
  return Date.parse(`${date}T${time}:00Z`) - Math.floor(ms / 60_000) * 60_000;
}

const dayFormat = new Intl.DateTimeFormat('en-GB', {
  timeZone: 'UTC',
  weekday: 'long',
  day: 'numeric',
  month: 'long',
});

/** `Wednesday 14 January`, for headings. */
export function dayWords(date: PlainDate): string {
  return dayFormat.format(new Date(`${date}T12:00:00Z`));
}
