import { describe, expect, it } from 'vitest';
import { plainDate } from '@/lib/quantities/plainDate';
import { dayLine } from '@/lib/theatre/dayLine';
import { isInSession } from '@/lib/theatre/inSession';
import { instantOf, timesShown, wallClock, whichOf } from '@/lib/theatre/localTime';
import { promiseTimes } from '@/lib/theatre/promise';
import { sessionSpan, weekly } from '@/lib/theatre/session';
import { parseSlot } from '@/lib/theatre/slot';

/**
 * Both days of 2026 on which the clocks change, in five zones of the IANA time zone database, release 2025b: an hour at night
 * in London and New York, half an hour on Lord Howe, at midnight itself in Santiago and Beirut. The instants are those of
 * Python 3.11's `zoneinfo` over the system's database:
 *
 *     python3 -c "from datetime import datetime as d, timezone as t; from zoneinfo import ZoneInfo as z
 *     print(d(2026, 10, 25, 1, 30, tzinfo=z('Europe/London'), fold=1).astimezone(t.utc))"
 *
 * `fold=1` is the second of two; a time is skipped where it does not come back the same from UTC. Hours of a day: every
 * quarter of an hour of it in UTC whose local minute is 0.
 */
const ZONES = [
  {
    zone: 'Europe/London',
    skipped: ['2026-03-29', '01:30'],
    twice: ['2026-10-25', '01:30', '2026-10-25T00:30:00.000Z', '2026-10-25T01:30:00.000Z'],
    eight: [
      ['2026-03-29', '2026-03-29T07:30:00.000Z'],
      ['2026-10-25', '2026-10-25T08:30:00.000Z'],
    ],
    before: '00:15',
    short: '00 02 03 04 05 06 07 08 09 10 11 12 13 14 15 16 17 18 19 20 21 22 23 00',
    long: '00 01 01 02 03 04 05 06 07 08 09 10 11 12 13 14 15 16 17 18 19 20 21 22 23 00',
  },
  {
    zone: 'America/New_York',
    skipped: ['2026-03-08', '02:30'],
    twice: ['2026-11-01', '01:30', '2026-11-01T05:30:00.000Z', '2026-11-01T06:30:00.000Z'],
    eight: [
      ['2026-03-08', '2026-03-08T12:30:00.000Z'],
      ['2026-11-01', '2026-11-01T13:30:00.000Z'],
    ],
    before: '00:15',
    short: '00 01 03 04 05 06 07 08 09 10 11 12 13 14 15 16 17 18 19 20 21 22 23 00',
    long: '00 01 01 02 03 04 05 06 07 08 09 10 11 12 13 14 15 16 17 18 19 20 21 22 23 00',
  },
  {
    zone: 'Australia/Lord_Howe',
    skipped: ['2026-10-04', '02:15'],
    twice: ['2026-04-05', '01:45', '2026-04-04T14:45:00.000Z', '2026-04-04T15:15:00.000Z'],
    eight: [
      ['2026-10-04', '2026-10-03T21:30:00.000Z'],
      ['2026-04-05', '2026-04-04T22:00:00.000Z'],
    ],
    before: '00:15',
    short: '00 01 03 04 05 06 07 08 09 10 11 12 13 14 15 16 17 18 19 20 21 22 23 00',
    long: '00 01 02 03 04 05 06 07 08 09 10 11 12 13 14 15 16 17 18 19 20 21 22 23 00',
  },
  {
    zone: 'America/Santiago',
    skipped: ['2026-09-06', '00:30'],
    twice: ['2026-04-04', '23:30', '2026-04-05T02:30:00.000Z', '2026-04-05T03:30:00.000Z'],
    eight: [
      ['2026-09-06', '2026-09-06T11:30:00.000Z'],
      ['2026-04-04', '2026-04-04T11:30:00.000Z'],
    ],
    before: '20:00',
    short: '01 02 03 04 05 06 07 08 09 10 11 12 13 14 15 16 17 18 19 20 21 22 23 00',
    long: '00 01 02 03 04 05 06 07 08 09 10 11 12 13 14 15 16 17 18 19 20 21 22 23 23 00',
  },
  {
    zone: 'Asia/Beirut',
    skipped: ['2026-03-29', '00:30'],
    twice: ['2026-10-24', '23:30', '2026-10-24T20:30:00.000Z', '2026-10-24T21:30:00.000Z'],
    eight: [
      ['2026-03-29', '2026-03-29T05:30:00.000Z'],
      ['2026-10-24', '2026-10-24T05:30:00.000Z'],
    ],
    before: '20:00',
    short: '01 02 03 04 05 06 07 08 09 10 11 12 13 14 15 16 17 18 19 20 21 22 23 00',
    long: '00 01 02 03 04 05 06 07 08 09 10 11 12 13 14 15 16 17 18 19 20 21 22 23 23 00',
  },
] as const;

const MINUTE = 60_000;
const on = (date: string) => plainDate.parse(date);
const iso = (ms: number) => new Date(ms).toISOString();

describe.each(ZONES)(
  'the theatre list where the clocks change, $zone',
  ({ zone, skipped, twice, eight, ...day }) => {
    const [lostDate, lostTime] = skipped;
    const [date, time, first, second] = twice;

    it('refuses a time that the clocks skip, for cases and for sessions', () => {
      expect(timesShown(on(lostDate), lostTime, zone)).toBe('never');
      expect(parseSlot({ date: on(lostDate), time: lostTime, minutes: 60 }, zone)).toMatchObject({
        ok: false,
        problems: [{ code: 'time-skipped' }],
      });
      expect(sessionSpan({ date: on(lostDate), from: lostTime, until: '08:30' }, zone)).toMatchObject({
        ok: false,
        problems: [{ code: 'time-skipped', path: ['from'] }],
      });
    });

    it('takes the first of a time that comes twice, or the second where that is asked for, and says which it was', () => {
      expect(timesShown(on(date), time, zone)).toBe('twice');
      const at = (which?: 'first' | 'second') =>
        parseSlot({ date: on(date), time, minutes: 90, which }, zone);
      expect(at()).toMatchObject({ value: { startsAt: first } });
      expect(at('first')).toMatchObject({ value: { startsAt: first } });
      expect(at('second')).toMatchObject({
        value: { startsAt: second, endsAt: iso(Date.parse(second) + 90 * MINUTE) },
      });
      expect([whichOf(first, zone), whichOf(second, zone)]).toEqual(['first', 'second']);
      expect(whichOf(eight[1][1], zone)).toBeNull();
    });

    it('a session begins with the first of a time that comes twice and ends with the second', () => {
      expect(sessionSpan({ date: on(date), from: time, until: '09:00' }, zone)).toMatchObject({
        value: { startsAt: first },
      });
      const ending = sessionSpan({ date: on(date), from: day.before, until: time }, zone);
      expect(ending).toMatchObject({ value: { endsAt: second } });
      if (!ending.ok) return;
      // a case in the second of the two is still in it
      const late = { startsAt: iso(Date.parse(second) - 15 * MINUTE), endsAt: second };
      expect(isInSession(late, [ending.value])).toBe('inside');
    });

    it('week after week a session and a case are at the same time on the wall', () => {
      for (const [changed, instant] of eight) {
        const dates = weekly(on(changed), 2);
        const spans = dates.map((one) => sessionSpan({ date: one, from: '08:30', until: '17:00' }, zone));
        expect(spans[0]).toMatchObject({ value: { startsAt: instant } });
        expect(instantOf(on(changed), '08:30', zone)).toBe(instant);
        for (const [at, span] of spans.entries())
          if (span.ok)
            expect(wallClock(span.value.startsAt, zone)).toEqual({ date: dates[at], time: '08:30' });
      }
    });

    it('sets are needed so many minutes before as really pass, whatever the wall shows', () => {
      // the case begins right where the clocks have gone back: half of its lead lies in the hour that came first
      const { fromAt } = promiseTimes(
        { startsAt: second, endsAt: iso(Date.parse(second) + 60 * MINUTE) },
        45,
        300,
      );
      expect(Date.parse(second) - Date.parse(fromAt)).toBe(45 * MINUTE);
      const between = (Date.parse(second) - Date.parse(first)) / MINUTE;
      expect(promiseTimes({ startsAt: second, endsAt: second }, between, 300).fromAt).toBe(first);
    });

    it('the line of the day leaves an hour out, or has it twice, as the wall does', () => {
      const all = (of: string) => {
        const begins = iso(Date.parse(instantOf(on(of), '12:00', zone) as string) - 24 * 60 * MINUTE);
        const ends = iso(Date.parse(begins) + 48 * 60 * MINUTE);
        return dayLine(on(of), [{ fromAt: begins, untilAt: ends }], zone);
      };
      const hours = (of: string) =>
        all(of)
          .hours.map(({ label }) => label.slice(0, 2))
          .join(' ');
      expect(hours(lostDate)).toBe(day.short);
      expect(hours(date)).toBe(day.long);
      for (const of of [lostDate, date]) {
        const { fromMs, toMs, hours: drawn } = all(of);
        expect([drawn[0]?.atMs, drawn.at(-1)?.atMs]).toEqual([fromMs, toMs]);
        for (const { atMs, label } of drawn) expect(wallClock(iso(atMs), zone).time).toBe(label);
      }
    });

    it('every quarter of an hour of both days goes to the wall and back', () => {
      for (const of of [lostDate, date]) {
        const noon = Date.parse(instantOf(on(of), '12:00', zone) as string);
        for (let ms = noon - 18 * 60 * MINUTE; ms <= noon + 18 * 60 * MINUTE; ms += 15 * MINUTE) {
          const wall = wallClock(iso(ms), zone);
          expect(instantOf(wall.date, wall.time, zone, whichOf(iso(ms), zone) ?? 'first')).toBe(iso(ms));
        }
      }
    });
  },
);
