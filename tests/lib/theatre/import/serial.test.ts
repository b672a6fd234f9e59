import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { momentOfSerial, serialOfDate } from '@/lib/lists/serial';
import { plainDate } from '@/lib/quantities/plainDate';

/**
 * ECMA-376 Part 1, 18.17.4.1: in the 1900 backward compatibility date base, 1 January 1900 has serial 1 and 31 December 9999
 * has 2,958,465. Both can only be so with a 29 February 1900, which the calendar does not have: 9999-12-31 is the
 * 2,958,464th day from 1 January 1900.
 */
describe('serial days of a spreadsheet (ECMA-376 Part 1, 18.17.4.1)', () => {
  it.each([
    [1, '1900-01-01', 'the lower limit'],
    [59, '1900-02-28', 'the last day before the one that never was'],
    [61, '1900-03-01', 'the first day after it'],
    [3687, '1910-02-03', 'an example of the standard (serial 3687)'],
    [38_749, '2006-02-01', 'an example of the standard'],
    [46_042, '2026-01-20', 'a day of our own time'],
    [2_958_465, '9999-12-31', 'the upper limit'],
  ])('%i is %s: %s', (serial, date) => {
    expect(momentOfSerial(serial)).toEqual({ date, minute: 0 });
    expect(serialOfDate(plainDate.parse(date))).toBe(serial);
  });

  it('has no 29 February 1900, no day before the first and none after the last', () => {
    expect(momentOfSerial(60)).toBeNull();
    expect(momentOfSerial(-1)).toBeNull();
    expect(momentOfSerial(2_958_466)).toBeNull();
    expect(momentOfSerial(20_260_120)).toBeNull();
  });

  it('counts one day too many from the calendar’s own count', () => {
    const days = (Date.UTC(9999, 11, 31) - Date.UTC(1900, 0, 1)) / 86_400_000 + 1;
    expect(days).toBe(2_958_464);
  });

  it('takes every whole minute of every day back and forth, however the fraction is rounded', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 61, max: 100_000 }),
        fc.integer({ min: 0, max: 1439 }),
        fc.constantFrom(0, 1e-9, -1e-9, 2e-6, -2e-6),
        (day, minute, off) => {
          const moment = momentOfSerial(day + minute / 1440 + (minute === 0 ? Math.max(0, off) : off));
          expect(moment?.minute).toBe(minute);
          expect(moment?.date && serialOfDate(moment.date)).toBe(day);
        },
      ),
    );
  });

  it('has times of no day, and none off the minute', () => {
    // 18.17.4.2: 0.5 is noon
    expect(momentOfSerial(0.5)).toEqual({ date: null, minute: 720 });
    expect(momentOfSerial(0.3541666667)).toEqual({ date: null, minute: 510 });
    // 18.17.4.3: 3687.4207639 is 10:05:54, which is no whole minute
    expect(momentOfSerial(3687.4207639)).toBeNull();
  });
});
