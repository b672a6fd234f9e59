import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countTouched, type LoadInLine, type PackFate, touchedBy } from '@/lib/loads/touched';
import examples from '../../fixtures/load-examples.json';

const load = (number: number, state: LoadInLine['state'], more: Partial<LoadInLine> = {}): LoadInLine => ({
  id: `load_${number}`,
  number: `L1-${String(number).padStart(5, '0')}`,
  state,
  startedAt: `2026-01-14T${String(number).padStart(2, '0')}:00:00.000Z`,
  indicators: [],
  byException: false,
  ...more,
});
const bio = (result: 'passed' | 'failed' | 'pending') => ({
  indicators: [{ kind: 'biological', result } as const],
});
const ids = (loads: readonly LoadInLine[]) => loads.map(({ id }) => Number(id.slice(5)));

describe('worked example Q2 of the trace', () => {
  // Load 0147 fails (A-03, A-07, K-12 and 5 pouches); the last accepted one is 0145; 0146, set out before its
  // biological result, held A-01 and a pouch. A-03 and the pouch of 0146 are used.
  const [q2] = examples.trace;
  const line = [
    load(1, 'accepted'),
    load(2, 'accepted', { byException: true, ...bio('pending') }),
    load(3, 'rejected'),
  ];

  it('ten packs are touched, two went out, eight are to be held', () => {
    const touched = touchedBy(line, 'load_3', 'other');
    expect(ids(touched.loads)).toEqual([2, 3]);
    expect(touched.since?.id).toBe('load_1');
    const fates: Record<number, PackFate[]> = {
      2: ['here', 'used'],
      3: ['used', 'here', 'here', 'here', 'here', 'here', 'here', 'here'],
    };
    const packs = ids(touched.loads).flatMap((number) => (fates[number] ?? []).map((fate) => ({ fate })));
    const { packs: all, used, toHold } = countTouched(packs);
    expect({ packs: all, alreadyUsed: used, toHold }).toEqual(q2?.expect);
  });
});

describe('what a failed load touches', () => {
  it.each([
    {
      why: 'only itself between two accepted ones',
      line: [load(1, 'accepted'), load(2, 'rejected'), load(3, 'accepted')],
      failed: 2,
      expect: [2],
    },
    {
      why: 'what was rejected or waits before it',
      line: [load(1, 'accepted'), load(2, 'rejected'), load(3, 'awaitingAcceptance'), load(4, 'rejected')],
      failed: 4,
      expect: [2, 3, 4],
    },
    {
      why: 'what runs now',
      line: [load(1, 'accepted'), load(2, 'rejected'), load(3, 'running')],
      failed: 2,
      expect: [2, 3],
    },
    {
      why: 'all on record where none was ever accepted',
      line: [load(1, 'rejected'), load(2, 'awaitingAcceptance'), load(3, 'rejected')],
      failed: 3,
      expect: [1, 2, 3],
    },
    {
      why: 'an accepted one with a failed indicator speaks for nothing',
      line: [
        load(1, 'accepted'),
        load(2, 'accepted', { indicators: [{ kind: 'chemical', result: 'failed' }] }),
        load(3, 'rejected'),
      ],
      failed: 3,
      expect: [2, 3],
    },
    {
      why: 'one set out by exception speaks once its result is known',
      line: [
        load(1, 'accepted'),
        load(2, 'accepted', { byException: true, ...bio('passed') }),
        load(3, 'rejected'),
      ],
      failed: 3,
      expect: [3],
    },
  ])('$why', ({ line, failed, expect: touched }) => {
    expect(ids(touchedBy(line, `load_${failed}`, 'other').loads)).toEqual(touched);
  });

  // CDC, Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), from memory: items processed
  // since the last negative spore test
  it('after a failed biological result an acceptance without one says nothing', () => {
    const line = [
      load(1, 'accepted', bio('passed')),
      load(2, 'accepted'),
      load(3, 'accepted'),
      load(4, 'accepted', bio('failed')),
      load(5, 'accepted'),
      load(6, 'accepted', bio('passed')),
      load(7, 'accepted'),
    ];
    const touched = touchedBy(line, 'load_4', 'biological');
    expect(ids(touched.loads)).toEqual([2, 3, 4, 5]);
    expect([touched.since?.id, touched.until?.id]).toEqual(['load_1', 'load_6']);
  });

  it('whatever the line: the failed one is in it, nothing that speaks is, and order does not matter', () => {
    const state = fc.constantFrom<LoadInLine['state']>(
      'running',
      'awaitingAcceptance',
      'accepted',
      'rejected',
    );
    const result = fc.constantFrom('passed', 'pending', 'failed', null);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(state, result, fc.boolean()), { minLength: 1, maxLength: 12 }),
        fc.nat(),
        fc.constantFrom('biological' as const, 'other' as const),
        (drawn, at, failure) => {
          const failed = at % drawn.length;
          const line = drawn.map(([one, biological, byException], place) =>
            load(place + 1, place === failed ? 'rejected' : one, {
              byException,
              ...(biological === null ? {} : bio(biological)),
            }),
          );
          const touched = touchedBy(line, `load_${failed + 1}`, failure);
          expect(ids(touched.loads)).toContain(failed + 1);
          expect(touchedBy([...line].reverse(), `load_${failed + 1}`, failure)).toEqual(touched);
          const wide = touchedBy(line, `load_${failed + 1}`, 'biological').loads.length;
          expect(wide).toBeGreaterThanOrEqual(touchedBy(line, `load_${failed + 1}`, 'other').loads.length);
          const numbers = ids(touched.loads);
          expect(numbers).toEqual(numbers.map((_, place) => (numbers[0] ?? 0) + place));
        },
      ),
    );
  });
});
