import { expect, test } from 'vitest';
import { exitOf, outcomeOf, type Reported, tableOf } from './report';

const sound: Reported = {
  name: 'kills',
  unit: 'kills',
  tried: 3,
  acknowledged: 1200,
  lost: 0,
  seen: ['seen'],
  faults: [],
  notTried: [],
  seconds: 2.4,
};
const faulty = { ...sound, faults: ['1 is gone'], lost: 1 };
const untried = { ...sound, tried: 0, acknowledged: null, lost: null, notTried: ['there is no strace'] };

test('a fault is a fault, also beside what could not be tried', () => {
  expect(outcomeOf(sound)).toBe('passed');
  expect(outcomeOf(faulty)).toBe('FAULTS');
  expect(outcomeOf({ ...faulty, notTried: ['x'] })).toBe('FAULTS');
});

test('what was not tried is not passed, and what tried nothing without a reason is a fault', () => {
  expect(outcomeOf(untried)).toBe('not tried here');
  expect(outcomeOf({ ...sound, notTried: ['x'] })).toBe('passed in part');
  expect(outcomeOf({ ...sound, tried: 0 })).toBe('FAULTS');
});

test('one fault in any suite ends the command with 1, and so does no suite at all', () => {
  expect(exitOf([sound, untried])).toBe(0);
  expect(exitOf([sound, faulty, sound])).toBe(1);
  expect(exitOf([])).toBe(1);
});

test('the table has a line for each suite, and says what was not tried and why', () => {
  const lines = tableOf([sound, untried, faulty]).join('\n');
  expect(lines).toMatch(/kills +3 kills +1,200 +0 +0 +2 s +passed/);
  expect(lines).toMatch(/not tried here, because there is no strace/);
  expect(lines).toMatch(/FAULT: 1 is gone/);
});
