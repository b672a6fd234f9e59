import { expect, test } from 'vitest';
import { isOverdue, nextNight } from '@/scripts/bootstrap/nightly.mjs';

// the time zone of the tests is Europe/London: see vitest.config.ts
test('the next night is today when its time is still to come, else tomorrow, also when the clocks change', () => {
  expect(nextNight('02:30', new Date('2026-01-14T01:00:00Z')).toISOString()).toBe('2026-01-14T02:30:00.000Z');
  expect(nextNight('02:30', new Date('2026-01-14T02:30:00Z')).toISOString()).toBe('2026-01-15T02:30:00.000Z');
  // 29 March 2026: 01:00 becomes 02:00; 25 October 2026: 02:00 becomes 01:00
  expect(nextNight('02:30', new Date('2026-03-28T12:00:00Z')).toISOString()).toBe('2026-03-29T01:30:00.000Z');
  expect(nextNight('02:30', new Date('2026-10-24T12:00:00Z')).toISOString()).toBe('2026-10-25T02:30:00.000Z');
  // a time that a night does not have: within the hour all the same
  expect(nextNight('01:30', new Date('2026-03-28T12:00:00Z')).toISOString()).toBe('2026-03-29T01:30:00.000Z');
});

test('a backup is overdue a day after the newest proven one', () => {
  const listed = (madeAt: string, faults: string[]) =>
    JSON.stringify({ backups: [{ madeAt, proof: { faults } }] });
  const now = new Date('2026-01-14T06:30:00Z');
  expect(isOverdue(listed('2026-01-13T06:31:00Z', []), now)).toBe(false);
  expect(isOverdue(listed('2026-01-13T06:29:00Z', []), now)).toBe(true);
  expect(isOverdue(listed('2026-01-14T06:00:00Z', ['damaged']), now)).toBe(true);
  expect(isOverdue('{"backups":[]}', now)).toBe(true);
  // what cannot be read is no reason to begin one every ten minutes
  expect(isOverdue('', now)).toBe(false);
});
