import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type BackupManifest, type BackupReason, newestProven } from '@/lib/backups/manifest';
import { whichToRemove } from '@/lib/backups/whichToRemove';

const made = (madeAt: string, more: { reason?: BackupReason; faults?: string[] } = {}): BackupManifest => ({
  format: 'kitwright-backup-1',
  file: `kitwright-${madeAt.slice(0, 10)}.sqlite`,
  reason: more.reason ?? 'nightly',
  madeAt,
  bytes: 1,
  sha256: '0'.repeat(64),
  isSealed: false,
  proof: { provedAt: madeAt, faults: more.faults ?? [], ledgerEntries: 1, head: null, schema: '0001.sql' },
});
const night = (day: string) => made(`2026-${day}T02:30:00.000Z`);
const days = (list: readonly BackupManifest[]) => list.map(({ madeAt }) => madeAt.slice(5, 10)).sort();

test('the newest nights stay, and the first of each of the newest months', () => {
  const nights = ['01-01', '01-02', '01-31', '02-01', '02-02', '02-03', '02-04'].map(night);
  expect(days(whichToRemove(nights, { nights: 2, months: 2 }))).toEqual(['01-02', '01-31', '02-02']);
  expect(days(whichToRemove(nights, { nights: 2, months: 1 }))).toEqual(['01-01', '01-02', '01-31', '02-02']);
});

test('one that is not proven counts for nothing, and nothing is deleted for its sake', () => {
  const proven = night('01-01');
  const unproven = ['01-02', '01-03', '01-04'].map((day) =>
    made(`2026-${day}T02:30:00.000Z`, { faults: ['damaged'] }),
  );
  expect(whichToRemove([proven, ...unproven], { nights: 1, months: 0 })).toEqual([]);
  expect(days(whichToRemove([proven, ...unproven, night('01-05')], { nights: 1, months: 0 }))).toEqual([
    '01-01',
    '01-02',
    '01-03',
    '01-04',
  ]);
  expect(newestProven([...unproven, proven])).toBe(proven);
  expect(newestProven(unproven)).toBeNull();
});

const anyBackup = fc
  .record({
    day: fc.integer({ min: 0, max: 900 }),
    reason: fc.constantFrom<BackupReason>('nightly', 'nightly', 'asked', 'beforeMigration'),
    isProven: fc.boolean(),
  })
  .map(({ day, reason, isProven }) =>
    made(new Date(Date.UTC(2026, 0, 1, 2, 30) + day * 86_400_000).toISOString(), {
      reason,
      faults: isProven ? [] : ['x'],
    }),
  );

test('the newest proven backup and whatever a person asked for are never deleted', () => {
  fc.assert(
    fc.property(
      fc.array(anyBackup, { maxLength: 60 }),
      fc.integer({ min: 0, max: 20 }),
      fc.integer({ min: 0, max: 13 }),
      (backups, nights, months) => {
        const removed = whichToRemove(backups, { nights, months });
        const left = backups.filter((one) => !removed.includes(one));
        expect(removed.every(({ reason }) => reason === 'nightly')).toBe(true);
        expect(newestProven(left)?.madeAt).toBe(newestProven(backups)?.madeAt);
        const proven = backups.filter(
          ({ reason, proof }) => reason === 'nightly' && proof.faults.length === 0,
        );
        const stay = left.filter(({ reason, proof }) => reason === 'nightly' && proof.faults.length === 0);
        expect(stay.length).toBeGreaterThanOrEqual(Math.min(proven.length, Math.max(1, nights)));
        expect(stay.length).toBeLessThanOrEqual(Math.max(1, nights) + months + sameMoment(proven));
      },
    ),
  );
});

/** Backups that fall on one moment are told apart by nothing: each of them stays. */
const sameMoment = (list: readonly BackupManifest[]) =>
  list.length - new Set(list.map(({ madeAt }) => madeAt)).size;
