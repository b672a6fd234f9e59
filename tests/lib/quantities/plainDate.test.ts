import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { expect, it } from 'vitest';
import { addDays, plainDate } from '@/lib/quantities/plainDate';

const day = (text: string) => plainDate.parse(text);
/** Days from the first to the last date of four figures. */
const ALL = Temporal.PlainDate.from('0000-01-01').until('9999-12-31').days;

it('adds days as the engine of calendars does, in every year that four figures write', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: ALL }), fc.integer({ min: 0, max: ALL }), (from, to) => {
      const dateOf = (days: number) => Temporal.PlainDate.from('0000-01-01').add({ days }).toString();
      expect(addDays(day(dateOf(from)), to - from)).toBe(dateOf(to));
    }),
  );
  expect(addDays(day('0099-12-31'), 1)).toBe('0100-01-01');
});

it('past the last day that can be written it is that day, and before the first that one', () => {
  for (const days of [1, 28, 14_680_064, 1e12]) {
    expect(addDays(day('9999-12-31'), days)).toBe('9999-12-31');
    expect(addDays(day('0000-01-01'), -days)).toBe('0000-01-01');
  }
});
