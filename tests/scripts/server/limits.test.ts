import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ENDPOINTS } from '@/lib/people/access';
import { kindOf, RATES, rateLimits } from '../../../scripts/server/limits.mjs';

const clock = () => {
  let ms = 0;
  return { now: () => ms, pass: (by: number) => (ms += by) };
};

test('20 technicians behind one address scan three a second each for ten minutes, and none waits', () => {
  const { now, pass } = clock();
  const limits = rateLimits({ now });
  for (let tick = 0; tick < 600 * 3; tick += 1) {
    pass(1000 / 3);
    for (let technician = 0; technician < 20; technician += 1)
      if (limits.wait({ kind: 'record', address: 'ward', person: `technician ${technician}` }) > 0)
        throw new Error(`technician ${technician} waits at scan ${tick}`);
  }
  expect(limits.remembered()).toBe(21);
});

test('20 technicians sign in within the same minute from one address, each after two mistakes', () => {
  const { now, pass } = clock();
  const limits = rateLimits({ now });
  for (let tried = 0; tried < 60; tried += 1) {
    pass(1000);
    expect(limits.wait({ kind: 'signIn', address: 'ward', person: null })).toBe(0);
  }
});

test.each(Object.entries(RATES))(
  '%s: after a burst it is let through at its rate, and told how long to wait',
  (kind, rates) => {
    const { now, pass } = clock();
    const limits = rateLimits({ now });
    const ask = () => limits.wait({ kind: kind as keyof typeof RATES, address: 'a', person: 'p' });
    const { burst, perSecond } = rates.person;
    for (let at = 0; at < burst; at += 1) expect(ask()).toBe(0);
    const wait = ask();
    expect(wait).toBeGreaterThanOrEqual(1);
    expect(Number.isInteger(wait)).toBe(true);
    pass(wait * 1000);
    for (let at = 0; at < Math.floor(wait * perSecond); at += 1) expect(ask()).toBe(0);
    // somebody else is not hindered by it
    expect(limits.wait({ kind: kind as keyof typeof RATES, address: 'b', person: 'q' })).toBe(0);
  },
);

test('never more than the burst and the rate since, whatever the times between', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 3000 }), { maxLength: 300 }), (gaps) => {
      const { now, pass } = clock();
      const limits = rateLimits({ now });
      let through = 0;
      for (const gap of gaps) {
        pass(gap);
        if (limits.wait({ kind: 'heavy', address: 'a', person: 'p' }) === 0) through += 1;
      }
      const { burst, perSecond } = RATES.heavy.person;
      expect(through).toBeLessThanOrEqual(burst + (now() / 1000) * perSecond);
    }),
  );
});

test('a clock that goes back lends nobody anything, and memory does not grow with addresses', () => {
  let ms = 1_000_000;
  const limits = rateLimits({ now: () => ms });
  for (let at = 0; at < RATES.signIn.address.burst; at += 1)
    limits.wait({ kind: 'signIn', address: 'a', person: null });
  ms = 0;
  expect(limits.wait({ kind: 'signIn', address: 'a', person: null })).toBeGreaterThan(0);
  for (let at = 0; at < 30_000; at += 1) limits.wait({ kind: 'other', address: `10.0.${at}`, person: null });
  expect(limits.remembered()).toBeLessThanOrEqual(20_000);
});

test('ten times the rate is ten times the burst', () => {
  const limits = rateLimits({ now: () => 0, times: 10 });
  for (let at = 0; at < 10 * RATES.record.person.burst; at += 1)
    if (limits.wait({ kind: 'record', address: `${at}`, person: 'p' }) !== 0)
      throw new Error(`held at ${at}`);
  expect(limits.wait({ kind: 'record', address: 'x', person: 'p' })).toBeGreaterThan(0);
});

/** Each declared address by its kind. */
const declared = Object.keys(ENDPOINTS).map((key) => {
  const [method = '', route = ''] = key.split(' ');
  return { method, route, kind: kindOf(method, route) };
});

test('every file and paper of the program is heavy, and every scan and entry is not', () => {
  const ends = /\.(csv|json|xlsx)$|\/(paper|export|file|report)$/;
  expect(declared.filter(({ route, kind }) => ends.test(route) && kind !== 'heavy')).toEqual([]);
  const entries = declared.filter(
    ({ method, route }) => method === 'POST' && /\/(entries|scans)$/.test(route),
  );
  expect(entries.length).toBeGreaterThan(3);
  expect(entries.filter(({ kind }) => kind !== 'record')).toEqual([]);
  for (const path of ['/api/v1/cases/import', '/api/v1/exchange/[list]', '/api/v1/theatre-list/plan'])
    expect(kindOf('POST', path)).toBe('heavy');
  for (const path of ['/api/v1/people/sign-in', '/api/v1/people/badge', '/api/v1/people/first-run'])
    expect(kindOf('POST', path)).toBe('signIn');
  for (const path of [
    '/api/v1/cases/[id]/kit',
    '/api/v1/emergency/answer',
    '/api/v1/emergency/taking',
    '/api/v1/reports/costs',
    '/api/v1/trace/lots',
  ])
    expect(kindOf('GET', path)).toBe('heavy');
  for (const path of [
    '/api/v1/cases/[id]',
    '/api/v1/cases/[id]/kit/list',
    '/api/v1/emergency/[id]',
    '/api/v1/restock/orders',
    '/api/v1/sets',
  ])
    expect(kindOf('GET', path)).toBe('other');
  expect(kindOf('GET', '/sets')).toBe('other');
  expect(kindOf('POST', '/api/v1/scans')).toBe('record');
});
