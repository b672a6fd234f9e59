import { describe, expect, it } from 'vitest';
import { scanFaults } from './checker';

const set = (...ids: string[]) => new Set(ids);
const sound = {
  acknowledged: set('a', 'b'),
  unknown: set('c', 'd'),
  stored: ['a', 'b', 'c'],
  entered: ['a', 'b', 'c'],
};

describe('the checker of scans after a kill', () => {
  it('is content where all acknowledged are there, and of the unanswered some', () => {
    expect(scanFaults(sound)).toEqual([]);
    expect(scanFaults({ ...sound, unknown: set('c') })).toEqual([]);
  });

  it.each([
    ['an acknowledged scan that is gone', { stored: ['b', 'c'] }, /1 acknowledged and not stored: a/],
    [
      'one that is stored and not in the ledger',
      { entered: ['a', 'c'] },
      /1 acknowledged and not in the ledger: b/,
    ],
    ['one that nobody sent', { stored: ['a', 'b', 'x'] }, /1 stored and sent by nobody: x/],
    ['one stored twice', { stored: ['a', 'b', 'b'] }, /1 stored twice: b/],
    ['one entered twice', { entered: ['a', 'a', 'b'] }, /1 in the ledger twice: a/],
  ])('finds %s', (_, change, fault) => {
    expect(scanFaults({ ...sound, ...change }).join('\n')).toMatch(fault);
  });
});
