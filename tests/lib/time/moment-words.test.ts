import { expect, test } from 'vitest';
import { momentWords } from '@/lib/wording/sets';

const NOW = '2026-11-26T22:00:00.000Z';

test.each([
  ['2026-11-26T05:40:00.000Z', 'today 05:40'],
  ['2026-11-25T23:10:00.000Z', 'yesterday 23:10'],
  ['2026-11-27T09:00:00.000Z', 'tomorrow 09:00'],
  // summer time: an hour later on the wall
  ['2026-04-01T09:00:00.000Z', '1 Apr 10:00'],
  ['2025-04-01T09:00:00.000Z', '1 Apr 2025 10:00'],
  ['2027-01-04T08:00:00.000Z', '4 Jan 2027 08:00'],
])('%s is told as %s', (instant, words) => {
  expect(momentWords(instant, NOW)).toBe(words);
});

test('the turn of the year is near all the same', () => {
  expect(momentWords('2026-12-31T23:30:00.000Z', '2027-01-01T06:00:00.000Z')).toBe('yesterday 23:30');
});
