import { expect, test } from 'vitest';
import { type BesideSlow, clientFaults, median } from './checker';

const sound: BesideSlow = {
  undisturbedMs: [10, 12, 11],
  besideMs: [14, 15, 90],
  failed: [],
  mostTimes: 3,
  connections: { before: 5, during: 205, after: 6 },
  clients: 200,
  memory: [200e6, 260e6, 265e6],
  limits: [{ what: 'a request without an end', seconds: 70, within: 100 }],
};

test('others are served nearly as fast, and connections and memory come back', () => {
  expect(clientFaults(sound)).toEqual([]);
  expect([median([3, 1, 2]), median([4, 1, 2, 3])]).toEqual([2, 2.5]);
});

test.each([
  ['others that wait', { besideMs: [60, 70, 80] }, /waited 6.4 times as long/],
  ['others that are not served', { besideMs: [] }, /nobody else was served/],
  ['others that fail', { failed: ['503'] }, /1 requests of others failed: 503/],
  [
    'slow ones that were not there',
    { connections: { before: 5, during: 20, after: 5 } },
    /the trouble was none/,
  ],
  [
    'connections that stay',
    { connections: { before: 5, during: 205, after: 150 } },
    /145 connections stayed/,
  ],
  ['memory that grows', { memory: [200e6, 300e6, 600e6] }, /memory grows .*300 MB, then 600 MB/],
  ['no limit', { limits: [{ what: 'x', seconds: null, within: 9 }] }, /x was never closed/],
  ['a late limit', { limits: [{ what: 'x', seconds: 12, within: 9 }] }, /x was closed after 12 s/],
])('%s are a fault', (_, change, fault) => {
  expect(clientFaults({ ...sound, ...change }).join('\n')).toMatch(fault);
});
