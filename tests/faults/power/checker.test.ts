import { expect, test } from 'vitest';
import { type AfterCut, cutFaults, cutLosses } from './checker';

const written = ['a', 'b', 'c', 'd'];
const sound: AfterCut = { written, acknowledged: 2, stored: ['a', 'b'], entered: ['a', 'b'], damage: [] };

test('what was acknowledged is there, and perhaps the one that was on its way', () => {
  expect(cutFaults(sound)).toEqual([]);
  expect(cutLosses(sound)).toBe(0);
  const andOne = { ...sound, stored: ['a', 'b', 'c'], entered: ['a', 'b', 'c'] };
  expect([cutFaults(andOne), cutLosses(andOne)]).toEqual([[], 0]);
});

test('a loss is counted, from rows and from the ledger alike', () => {
  expect(cutLosses({ ...sound, stored: ['a'] })).toBe(1);
  expect(cutLosses({ ...sound, entered: [] })).toBe(2);
  expect(cutLosses({ ...sound, stored: null, entered: [] })).toBe(2);
});

test.each([
  ['damage', { damage: ['page 7 is wrong'] }, /page 7/],
  ['a file that cannot be opened', { stored: null }, /cannot be opened/],
  ['a gap', { stored: ['b'] }, /stored is b where a should be/],
  ['a gap in the ledger', { entered: ['a', 'c'] }, /in the ledger is c where b should be/],
  ['what nobody wrote by then', { stored: ['a', 'b', 'c', 'd'] }, /1 stored and sent by nobody: d/],
  ['a row that is there twice', { stored: ['a', 'b', 'b'] }, /1 stored twice: b/],
])('%s is a fault', (_, change, fault) => {
  expect(cutFaults({ ...sound, ...change }).join('\n')).toMatch(fault);
});
