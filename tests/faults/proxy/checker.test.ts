import { expect, test } from 'vitest';
import { onceFaults, type SentOnce } from './checker';

const sound: SentOnce = {
  kind: 'receipts',
  acknowledged: new Set(['a', 'b']),
  unknown: new Set(['c']),
  stored: ['a', 'b'],
  entered: ['a', 'b'],
  pieces: [{ id: 'a', sent: 3, there: 3 }],
  refused: [],
};

test('everything acknowledged is there once, with its pieces', () => {
  expect(onceFaults(sound)).toEqual([]);
  expect(onceFaults({ ...sound, entered: null, stored: ['a', 'b', 'c'] })).toEqual([]);
});

test.each([
  ['a row that is gone', { stored: ['a'] }, /acknowledged and not stored: b/],
  ['a row that is there twice', { stored: ['a', 'b', 'b'] }, /stored twice: b/],
  ['an entry that is there twice', { entered: ['a', 'a', 'b'] }, /in the ledger twice: a/],
  ['pieces that were received twice', { pieces: [{ id: 'a', sent: 3, there: 6 }] }, /a has 6 of 3/],
  ['a refusal of what was sent again', { refused: ['409'] }, /1 refused: 409/],
  [
    'nothing acknowledged',
    { acknowledged: new Set<string>(), stored: [], entered: [] },
    /none was acknowledged/,
  ],
])('%s is a fault', (_, change, fault) => {
  expect(onceFaults({ ...sound, ...change }).join('\n')).toMatch(fault);
});
