import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import {
  afterByWork,
  beforeByWork,
  type WorkingHours,
  workBetween,
  workingDayBefore,
  workingHours,
  workOf,
} from '@/lib/time/workingTime';
import { instantOfWall, wallOfInstant } from '@/lib/time/zone';

const on = (date: string) => plainDate.parse(date);
const LONDON = 'Europe/London';
const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

const day = (from: string, to: string) => [{ from, to }];
const week = (hours: { from: string; to: string }[], weekend: { from: string; to: string }[] = []) =>
  workingHours.parse({
    week: {
      monday: hours,
      tuesday: hours,
      wednesday: hours,
      thursday: hours,
      friday: hours,
      saturday: weekend,
      sunday: weekend,
    },
    holidays: ['2026-04-03', '2026-04-06'],
  });
const OFFICE = week(day('08:00', '18:00'));
const ALWAYS = week(day('00:00', '24:00'), day('00:00', '24:00'));
/** All day and night, the two holidays too: elapsed time. */
const NO_HOLIDAY: WorkingHours = { ...ALWAYS, holidays: [] };

const ms = (text: string, zone = LONDON) => {
  const found = instantOfWall({ date: on(text.slice(0, 10)), time: text.slice(11) }, zone, {
    skipped: 'refuse',
    repeated: 'first',
  });
  if (found.kind !== 'instant') throw new Error(`${text} is skipped`);
  return found.ms;
};

describe('work between two instants', () => {
  it.each([
    { why: 'Friday afternoon to Monday morning', from: '2026-01-16 16:00', to: '2026-01-19 08:00', hours: 2 },
    { why: 'within a day', from: '2026-01-14 09:15', to: '2026-01-14 11:45', hours: 2.5 },
    {
      why: 'begun before work and ended after it',
      from: '2026-01-14 05:00',
      to: '2026-01-14 22:00',
      hours: 10,
    },
    {
      why: 'over Easter: Good Friday and Monday are stated holidays',
      from: '2026-04-02 17:00',
      to: '2026-04-07 09:00',
      hours: 2,
    },
  ])('$why: $hours h', ({ from, to, hours }) => {
    expect(workBetween(ms(from), ms(to), OFFICE, LONDON)).toBe(hours * HOUR);
    expect(workBetween(ms(to), ms(from), OFFICE, LONDON)).toBe(-hours * HOUR);
  });

  it('a night shift over the change is 7 or 9 hours, though the wall says 8', () => {
    const nights = week(day('00:00', '08:00'), day('00:00', '08:00'));
    const lengthOf = (date: string) =>
      workOf(on(date), nights, LONDON).reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0);
    expect(lengthOf('2026-03-29')).toBe(7 * HOUR);
    expect(lengthOf('2026-10-25')).toBe(9 * HOUR);
    expect(lengthOf('2026-03-30')).toBe(8 * HOUR);
  });

  it('work that begins in a skipped hour begins when it is over', () => {
    const early = week([], day('01:30', '05:00'));
    expect(workOf(on('2026-03-29'), early, LONDON)).toEqual([
      { fromMs: ms('2026-03-29 02:30'), toMs: ms('2026-03-29 05:00') },
    ]);
  });
});

describe('working days', () => {
  it.each([
    { date: '2026-01-19', days: 2, is: '2026-01-15' },
    { date: '2026-01-18', days: 1, is: '2026-01-16' },
    { date: '2026-04-07', days: 1, is: '2026-04-02' },
    { date: '2026-04-07', days: 5, is: '2026-03-27' },
  ])('$days before $date is $is', ({ date, days, is }) => {
    expect(workingDayBefore(on(date), days, OFFICE, LONDON)).toBe(is);
  });

  it('there is none where nobody works', () => {
    expect(workingDayBefore(on('2026-01-19'), 1, week([]), LONDON)).toBeNull();
    expect(beforeByWork(ms('2026-01-19 08:00'), HOUR, week([]), LONDON)).toBeNull();
    expect(afterByWork(ms('2026-01-19 08:00'), HOUR, week([]), LONDON)).toBeNull();
  });
});

describe('whatever the week and the zone', () => {
  const zone = fc.constantFrom(
    LONDON,
    'America/New_York',
    'Australia/Lord_Howe',
    'America/St_Johns',
    'Pacific/Chatham',
  );
  const hours = fc.constantFrom(
    OFFICE,
    ALWAYS,
    week(
      [
        { from: '06:30', to: '12:00' },
        { from: '13:00', to: '24:00' },
      ],
      day('00:00', '03:15'),
    ),
  );
  // spring and autumn of 2026, by the minute
  const instant = fc
    .integer({ min: Date.UTC(2026, 1, 1) / MINUTE, max: Date.UTC(2026, 11, 1) / MINUTE })
    .map((at) => at * MINUTE);
  const work = fc.integer({ min: 1, max: 6_000 }).map((minutes) => minutes * MINUTE);

  it('work counted on is the work between, and ends in work', () => {
    fc.assert(
      fc.property(instant, work, hours, zone, (from, amount, of, where) => {
        const end = afterByWork(from, amount, of, where) as number;
        expect(workBetween(from, end, of, where)).toBe(amount);
        expect(workBetween(from, end - MINUTE, of, where)).toBe(amount - MINUTE);
      }),
    );
  });

  it('work counted back is the work between, and begins in work', () => {
    fc.assert(
      fc.property(instant, work, hours, zone, (until, amount, of, where) => {
        const begin = beforeByWork(until, amount, of, where) as number;
        expect(workBetween(begin, until, of, where)).toBe(amount);
        expect(workBetween(begin + MINUTE, until, of, where)).toBe(amount - MINUTE);
      }),
    );
  });

  it('work adds up over any instant between', () => {
    fc.assert(
      fc.property(instant, instant, instant, hours, zone, (a, b, c, of, where) => {
        const [first, second, third] = [a, b, c].sort((x, y) => x - y) as [number, number, number];
        expect(workBetween(first, second, of, where) + workBetween(second, third, of, where)).toBe(
          workBetween(first, third, of, where),
        );
      }),
    );
  });

  it('where work never stops it is the time that passes, change or no change', () => {
    fc.assert(
      fc.property(instant, work, zone, (from, amount, where) => {
        expect(afterByWork(from, amount, NO_HOLIDAY, where)).toBe(from + amount);
        expect(beforeByWork(from, amount, NO_HOLIDAY, where)).toBe(from - amount);
      }),
    );
  });

  it('no work falls on a holiday or outside the hours of the wall', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 364 }), zone, (days, where) => {
        const date = addDays(on('2026-01-01'), days);
        const stretches = workOf(date, OFFICE, where);
        if (OFFICE.holidays.includes(date)) expect(stretches).toEqual([]);
        for (const { fromMs, toMs } of stretches) {
          expect(wallOfInstant(fromMs, where)).toEqual({ date, time: '08:00' });
          expect(wallOfInstant(toMs, where)).toEqual({ date, time: '18:00' });
        }
      }),
    );
  });
});

it('stretches of a day follow each other, or every fault is said', () => {
  const parse = (monday: unknown) =>
    workingHours.safeParse({ ...OFFICE, week: { ...OFFICE.week, monday } }).success;
  expect(
    parse([
      { from: '08:00', to: '12:00' },
      { from: '12:00', to: '18:00' },
    ]),
  ).toBe(true);
  expect(
    parse([
      { from: '08:00', to: '12:00' },
      { from: '11:00', to: '18:00' },
    ]),
  ).toBe(false);
  expect(parse([{ from: '18:00', to: '08:00' }])).toBe(false);
  expect(parse([{ from: '08:00', to: '24:30' }])).toBe(false);
});
