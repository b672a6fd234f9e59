import { describe, expect, it } from 'vitest';
import { dateOrderOf, readDate } from '@/lib/lists/dates';
import { plainDate } from '@/lib/quantities/plainDate';
import { readTime } from '@/lib/theatre/import/times';
import { wallTimes } from '@/lib/theatre/import/wallTime';

describe('dates as texts', () => {
  it.each([
    ['2026-01-20', '2026-01-20'],
    ['20.01.2026', '2026-01-20'],
    ['20.1.2026', '2026-01-20'],
    ['20 Jan 2026', '2026-01-20'],
    ['Tue 20 January 2026', '2026-01-20'],
    ['20-jan-2026', '2026-01-20'],
    ['1st Sept 2026', '2026-09-01'],
    ['20/01/2026', '2026-01-20'],
    ['01/20/2026', '2026-01-20'],
    ['03/03/2026', '2026-03-03'],
    ['29/02/2028', '2028-02-29'],
  ])('%s is %s', (text, date) => {
    expect(readDate(text, null)).toEqual({ ok: true, date });
  });

  it.each([
    ['03/04/2026', null, 'eitherOrder'],
    ['20/01/2026', 'monthFirst', 'otherOrder'],
    ['20/01/2026', 'mixed', 'otherOrder'],
    ['29/02/2026', null, 'noSuchDay'],
    ['2026-13-01', null, 'noSuchDay'],
    ['31.04.2026', null, 'noSuchDay'],
    ['20/01/26', null, 'notADate'],
    ['46042', null, 'notADate'],
    ['20 Marvember 2026', null, 'notADate'],
    ['tomorrow', null, 'notADate'],
  ] as const)('%s (%s) is refused: %s', (text, order, why) => {
    expect(readDate(text, order)).toEqual({ ok: false, why });
  });

  it('may be either of two days, until the file or a person says which', () => {
    expect(readDate('03/04/2026', 'dayFirst')).toEqual({ ok: true, date: '2026-04-03' });
    expect(readDate('03/04/2026', 'monthFirst')).toEqual({ ok: true, date: '2026-03-04' });
    expect(dateOrderOf(['03/04/2026', '2026-01-01'])).toBeNull();
    expect(dateOrderOf(['03/04/2026', '13/04/2026'])).toBe('dayFirst');
    expect(dateOrderOf(['03/04/2026', '04/13/2026'])).toBe('monthFirst');
    expect(dateOrderOf(['13/04/2026', '04/13/2026'])).toBe('mixed');
  });
});

describe('times', () => {
  it.each([
    ['08:30', { kind: 'time', minute: 510 }],
    ['8:30', { kind: 'time', minute: 510 }],
    ['08:30:00', { kind: 'time', minute: 510 }],
    ['0830', { kind: 'time', minute: 510 }],
    ['8:30 pm', { kind: 'time', minute: 1230 }],
    ['12:05 AM', { kind: 'time', minute: 5 }],
    ['12:05 p.m.', { kind: 'time', minute: 725 }],
    [0.3541666667, { kind: 'time', minute: 510 }],
    [46_042.5, { kind: 'local', date: '2026-01-20', minute: 720 }],
    ['2026-01-20T08:30', { kind: 'local', date: '2026-01-20', minute: 510 }],
    ['2026-01-20 08:30:00', { kind: 'local', date: '2026-01-20', minute: 510 }],
    ['2026-06-10T08:30:00+01:00', { kind: 'instant', at: '2026-06-10T07:30:00.000Z' }],
    ['2026-06-10T08:30:00Z', { kind: 'instant', at: '2026-06-10T08:30:00.000Z' }],
  ])('%s is %o', (cell, read) => {
    expect(readTime(cell)).toEqual(read);
  });

  it.each([
    '8.30',
    '830',
    '24:00',
    '08:60',
    '13:00 pm',
    '0:30 am',
    'half past eight',
    '08:30:20',
    8.5,
    830,
    '',
  ])('%s is no time', (cell) => {
    // 8.5 is noon of 8 January 1900: a day, so no time of day, and far from any theatre list
    const read = readTime(cell);
    expect(read === null || (read.kind === 'local' && read.date < '1910')).toBe(true);
  });
});

/**
 * Changes of the clocks as the IANA time zone database has them for 2026 (and 2011 for Samoa, which left out a day):
 * Europe by Directive 2000/84/EC and the UK Summer Time Order 2002, last Sundays of March and October at 01:00 UTC; the
 * United States by the Energy Policy Act of 2005, second Sunday of March and first of November at 02:00; Lord Howe Island
 * by half an hour.
 */
describe('wall times', () => {
  it.each([
    ['Europe/London', '2026-03-29', '01:00', 0],
    ['Europe/London', '2026-03-29', '01:59', 0],
    ['Europe/London', '2026-03-29', '00:59', 1],
    ['Europe/London', '2026-03-29', '02:00', 1],
    ['Europe/London', '2026-10-25', '00:59', 1],
    ['Europe/London', '2026-10-25', '01:00', 2],
    ['Europe/London', '2026-10-25', '01:59', 2],
    ['Europe/London', '2026-10-25', '02:00', 1],
    ['Europe/Berlin', '2026-03-29', '02:30', 0],
    ['Europe/Berlin', '2026-10-25', '02:30', 2],
    ['America/New_York', '2026-03-08', '02:30', 0],
    ['America/New_York', '2026-11-01', '01:30', 2],
    ['Australia/Lord_Howe', '2026-10-04', '02:15', 0],
    ['Australia/Lord_Howe', '2026-04-05', '01:45', 2],
    ['Pacific/Apia', '2011-12-30', '12:00', 0],
    ['Asia/Kolkata', '2026-03-29', '01:30', 1],
  ])('%s %s %s comes %i times', (zone, date, time, times) => {
    const [hour, minute] = time.split(':').map(Number) as [number, number];
    const found = wallTimes(zone).instantsOf(plainDate.parse(date), hour * 60 + minute);
    expect(found).toHaveLength(times);
    for (const at of found)
      expect(new Date(at).toLocaleString('sv-SE', { timeZone: zone }).slice(0, 16)).toBe(`${date} ${time}`);
    expect([...found].sort()).toEqual(found);
  });

  it('of the repeated hour in London are an hour apart, summer time first', () => {
    expect(wallTimes('Europe/London').instantsOf(plainDate.parse('2026-10-25'), 90)).toEqual([
      '2026-10-25T00:30:00.000Z',
      '2026-10-25T01:30:00.000Z',
    ]);
  });
});
