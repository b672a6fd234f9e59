import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { instantOf } from '@/lib/theatre/localTime';
import {
  instantOfWall,
  startOfDay,
  timeZone,
  wallOfInstant,
  weekdayOf,
  writtenInstant,
} from '@/lib/time/zone';

const on = (date: string) => plainDate.parse(date);
const HOUR = 3_600_000;

/**
 * Clock changes of 2026. Source: IANA time zone database (files europe, northamerica, australasia, africa), as two
 * other readers of it list them (zdump, and zoneinfo of Python); Morocco's are those predicted there for Ramadan.
 * `at`: the instant of the change. `skipped`, `repeated`: a wall time it skips or shows twice, and the length in minutes.
 */
const CHANGES = [
  { zone: 'Europe/London', at: '2026-03-29T01:00:00Z', skipped: '2026-03-29 01:30', minutes: 60 },
  { zone: 'Europe/London', at: '2026-10-25T01:00:00Z', repeated: '2026-10-25 01:30', minutes: 60 },
  { zone: 'America/New_York', at: '2026-03-08T07:00:00Z', skipped: '2026-03-08 02:30', minutes: 60 },
  { zone: 'America/New_York', at: '2026-11-01T06:00:00Z', repeated: '2026-11-01 01:30', minutes: 60 },
  { zone: 'Australia/Lord_Howe', at: '2026-10-03T15:30:00Z', skipped: '2026-10-04 02:15', minutes: 30 },
  { zone: 'Australia/Lord_Howe', at: '2026-04-04T15:00:00Z', repeated: '2026-04-05 01:45', minutes: 30 },
  { zone: 'America/St_Johns', at: '2026-03-08T05:30:00Z', skipped: '2026-03-08 02:30', minutes: 60 },
  { zone: 'America/St_Johns', at: '2026-11-01T04:30:00Z', repeated: '2026-11-01 01:30', minutes: 60 },
  { zone: 'Africa/Casablanca', at: '2026-03-22T02:00:00Z', skipped: '2026-03-22 02:30', minutes: 60 },
  { zone: 'Africa/Casablanca', at: '2026-02-15T02:00:00Z', repeated: '2026-02-15 02:30', minutes: 60 },
  { zone: 'Pacific/Chatham', at: '2026-09-26T14:00:00Z', skipped: '2026-09-27 03:15', minutes: 60 },
  { zone: 'Pacific/Chatham', at: '2026-04-04T14:00:00Z', repeated: '2026-04-05 03:15', minutes: 60 },
] as { zone: string; at: string; skipped?: string; repeated?: string; minutes: number }[];

const ZONES = [...new Set(CHANGES.map(({ zone }) => zone)), 'Asia/Kathmandu'];

const wallOf = (text: string) => ({ date: on(text.slice(0, 10)), time: text.slice(11) });
const minuteOf = (time: string) => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));

/** What the wall shows by the system's own zone data (ICU), asked without the package. */
function shown(ms: number, zone: string): string {
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(new Date(ms));
  const part = (type: string) => parts.find((one) => one.type === type)?.value;
  return `${part('year')}-${part('month')}-${part('day')} ${part('hour')}:${part('minute')}`;
}

describe.each(CHANGES)('$zone, $at', ({ zone, at, skipped, repeated, minutes }) => {
  const changeMs = Date.parse(at);

  it(`the wall jumps by ${minutes} minutes at that instant, and not before`, () => {
    const [before, after] = [wallOfInstant(changeMs - 60_000, zone), wallOfInstant(changeMs, zone)];
    const jump = minuteOf(after.time) - minuteOf(before.time) - 1;
    expect(jump).toBe(skipped ? minutes : -minutes);
  });

  if (skipped)
    it(`${skipped} never comes: it is refused, or moved on, as asked for`, () => {
      expect(instantOfWall(wallOf(skipped), zone, { skipped: 'refuse', repeated: 'first' })).toEqual({
        kind: 'skipped',
      });
      const moved = instantOfWall(wallOf(skipped), zone, { skipped: 'moveOn', repeated: 'first' });
      expect(moved).toMatchObject({ kind: 'instant', was: 'skipped' });
      const ms = moved.kind === 'instant' ? moved.ms : Number.NaN;
      expect(minuteOf(wallOfInstant(ms, zone).time)).toBe(minuteOf(wallOf(skipped).time) + minutes);
      expect(ms).toBeGreaterThanOrEqual(changeMs);
      expect(ms).toBeLessThan(changeMs + minutes * 60_000);
    });

  if (repeated)
    it(`${repeated} comes twice: the first or the second, as asked for, and the text tells them apart`, () => {
      const [first, second] = (['first', 'second'] as const).map((which) => {
        const found = instantOfWall(wallOf(repeated), zone, { skipped: 'refuse', repeated: which });
        expect(found).toMatchObject({ kind: 'instant', was: 'repeated' });
        return found.kind === 'instant' ? found.ms : Number.NaN;
      }) as [number, number];
      expect(second - first).toBe(minutes * 60_000);
      expect(first).toBeLessThan(changeMs);
      expect(second).toBeGreaterThanOrEqual(changeMs);
      expect(shown(first, zone)).toBe(repeated);
      expect(shown(second, zone)).toBe(repeated);
      expect(writtenInstant(first, zone)).not.toBe(writtenInstant(second, zone));
      expect(Date.parse(writtenInstant(second, zone))).toBe(second);
    });

  it('the day is shorter or longer by as much', () => {
    const date = wallOfInstant(changeMs, zone).date;
    const length = startOfDay(addDays(date, 1), zone) - startOfDay(date, zone);
    expect(length).toBe(24 * HOUR + (skipped ? -1 : 1) * minutes * 60_000);
  });
});

describe('at any time', () => {
  const minute = fc.integer({
    min: Date.UTC(2015, 0, 1) / 60_000,
    max: Date.UTC(2036, 0, 1) / 60_000,
  });

  it('the wall shows what the system’s own zone data say', () => {
    fc.assert(
      fc.property(minute, fc.constantFrom(...ZONES), (at, zone) => {
        const { date, time } = wallOfInstant(at * 60_000, zone);
        expect(`${date} ${time}`).toBe(shown(at * 60_000, zone));
      }),
      { numRuns: 2000 },
    );
  });

  it('there and back again is the same instant, or the other one of an hour that comes twice', () => {
    fc.assert(
      fc.property(minute, fc.constantFrom(...ZONES), (at, zone) => {
        const ms = at * 60_000;
        const wall = wallOfInstant(ms, zone);
        const found = (['first', 'second'] as const).map((repeated) =>
          instantOfWall(wall, zone, { skipped: 'refuse', repeated }),
        );
        expect(found.map((one) => one.kind === 'instant' && one.ms)).toContain(ms);
        expect(found.every((one) => one.kind === 'instant' && one.was !== 'skipped')).toBe(true);
        const isOnce = found[0]?.kind === 'instant' && found[0].was === 'once';
        if (isOnce) expect(found[1]).toEqual(found[0]);
      }),
      { numRuns: 2000 },
    );
  });

  it('near every change too, minute by minute', () => {
    for (const { zone, at } of CHANGES) {
      for (let minute = -150; minute <= 150; minute += 1) {
        const ms = Date.parse(at) + minute * 60_000;
        const wall = wallOfInstant(ms, zone);
        expect(`${wall.date} ${wall.time}`).toBe(shown(ms, zone));
        const found = (['first', 'second'] as const).map((repeated) =>
          instantOfWall(wall, zone, { skipped: 'refuse', repeated }),
        );
        expect(found.map((one) => one.kind === 'instant' && one.ms)).toContain(ms);
      }
    }
  });

  it('days follow each other without a gap', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 7000 }), fc.constantFrom(...ZONES), (days, zone) => {
        const date = addDays(on('2015-01-01'), days);
        const [begins, ends] = [startOfDay(date, zone), startOfDay(addDays(date, 1), zone)];
        expect(wallOfInstant(begins, zone).date).toBe(date);
        expect(wallOfInstant(begins - 1000, zone).date).toBe(addDays(date, -1));
        expect(wallOfInstant(ends - 1000, zone).date).toBe(date);
      }),
    );
  });
});

it('the light reading of wall times that browsers have says the same (refused where skipped, else the first)', () => {
  for (const { zone, at } of CHANGES) {
    for (let minute = -150; minute <= 150; minute += 15) {
      const utc = new Date(Date.parse(at) + minute * 60_000);
      const { date, time } = wallOfInstant(utc.getTime(), zone);
      const walls = [
        { date, time },
        wallOf(CHANGES.find((one) => one.at === at)?.skipped ?? `${date} ${time}`),
      ];
      for (const wall of walls) {
        const found = instantOfWall(wall, zone, { skipped: 'refuse', repeated: 'first' });
        const expected = found.kind === 'instant' ? new Date(found.ms).toISOString() : null;
        expect(instantOf(wall.date, wall.time, zone)).toBe(expected);
      }
    }
  }
});

it('a day begins later where the clocks skip midnight (Africa/Cairo, 24 April 2026, IANA)', () => {
  expect(wallOfInstant(startOfDay(on('2026-04-24'), 'Africa/Cairo'), 'Africa/Cairo').time).toBe('01:00');
});

it('14 January 2026 is a Wednesday, 3 (ISO 8601)', () => {
  expect(weekdayOf(on('2026-01-14'))).toBe(3);
});

it('a zone is one by its name; an offset, a guess or nothing is none', () => {
  expect(ZONES.every((zone) => timeZone.safeParse(zone).success)).toBe(true);
  expect(['', '+01:00', 'London', 'Europe/Nowhere'].some((zone) => timeZone.safeParse(zone).success)).toBe(
    false,
  );
});
