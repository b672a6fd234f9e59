import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkServiceLife, serviceLifeInput } from '@/lib/calculations/serviceLife/schema';
import { serviceLife } from '@/lib/calculations/serviceLife/serviceLife';

/** Invented cases, worked by hand and recomputed independently; see the file. */
const [W1] = JSON.parse(readFileSync('tests/fixtures/calculation-examples.json', 'utf8'))['service-life'];

const booked = (count: number) => Array.from({ length: count }, (_, at) => ({ case: `case ${at + 1}` }));
const thing = (more: Record<string, unknown>) => ({
  thing: 'pilot bit',
  limitUses: 10,
  limitCycles: 30,
  uses: 0,
  cycles: 0,
  booked: [],
  ...more,
});
const said = (...things: Record<string, unknown>[]) => serviceLife(serviceLifeInput.parse({ things }));
function only(more: Record<string, unknown>) {
  const found = said(thing(more));
  const answer = found.outcome === 'answered' ? found.answer : found.known;
  const [first] = answer?.things ?? [];
  if (!first) throw new Error('there is one');
  return first;
}

it('worked example W1: replace after the 2nd of three', () => {
  const { limitUses, limitCycles, uses, cycles, booked: count, expect: expected } = W1;
  const found = only({ limitUses, limitCycles, uses, cycles, booked: booked(count) });
  expect(found).toMatchObject({
    state: 'replaceAfter',
    mayAfter: 2,
    mustAfter: 2,
    by: 'uses',
    afterCase: 'case 2',
  });
  expect(found.sentence.toLowerCase()).toContain(expected);
});

describe('one piece', () => {
  it('the sooner of the two limits decides', () => {
    expect(only({ uses: 8, cycles: 29, booked: booked(3) })).toMatchObject({ mayAfter: 1, by: 'cycles' });
  });

  it('at its limit it is replaced now, whatever is booked', () => {
    expect(only({ uses: 10 })).toMatchObject({ state: 'replaceNow', mustAfter: 0, usesLeft: 0 });
    expect(only({ uses: 12, booked: booked(2) })).toMatchObject({ state: 'replaceNow' });
  });

  it('a limit of none is reached at once', () => expect(only({ limitUses: 0 }).state).toBe('replaceNow'));

  it('is within its limits where what is booked does not reach them', () => {
    expect(only({ uses: 6, booked: booked(3) })).toMatchObject({
      state: 'within',
      mayAfter: null,
      usesLeft: 4,
    });
  });

  it('agrees with going through the cases one by one', () => {
    const cases = fc.array(fc.record({ uses: fc.nat(3), cycles: fc.nat(2) }), { maxLength: 12 });
    fc.assert(
      fc.property(
        fc.nat(12),
        fc.nat(20),
        fc.nat(12),
        fc.nat(20),
        cases,
        (uses, cycles, limitUses, limitCycles, more) => {
          const found = only({
            uses,
            cycles,
            limitUses,
            limitCycles,
            booked: more.map((one, at) => ({ case: `${at}`, ...one })),
          });
          let [u, c, after] = [uses, cycles, null as number | null];
          if (u >= limitUses || c >= limitCycles) after = 0;
          more.forEach((one, at) => {
            u += one.uses;
            c += one.cycles;
            if (after === null && (u >= limitUses || c >= limitCycles)) after = at + 1;
          });
          expect(found.mayAfter).toBe(after);
          expect(found.mustAfter).toBe(after);
        },
      ),
    );
  });
});

describe('a slot of unmarked pieces', () => {
  it('may be due once one of them could have had every use, and must be by the pigeonhole', () => {
    // two bits, 10 uses each: 10 uses may all be of one; 19 cannot be spread so that both stay under 10
    expect(only({ pieces: 2, limitCycles: null, uses: 9, booked: booked(3) })).toMatchObject({
      state: 'mayBeDue',
      mayAfter: 1,
      mustAfter: null,
    });
    expect(only({ pieces: 2, limitCycles: null, uses: 18, booked: booked(3) })).toMatchObject({
      state: 'mayBeDue',
      mayAfter: 0,
      mustAfter: 1,
    });
    expect(only({ pieces: 2, limitCycles: null, uses: 19 }).state).toBe('replaceNow');
  });

  it('the bounds are those of every way to spread the uses', () => {
    const spreads = (uses: number, pieces: number): number[][] =>
      pieces === 1
        ? [[uses]]
        : Array.from({ length: uses + 1 }, (_, first) =>
            spreads(uses - first, pieces - 1).map((rest) => [first, ...rest]),
          ).flat();
    fc.assert(
      fc.property(
        fc.nat(9),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 1, max: 5 }),
        (uses, pieces, limit) => {
          const found = only({ pieces, limitUses: limit, limitCycles: null, uses });
          const worst = spreads(uses, pieces).map((spread) => Math.max(...spread));
          expect(found.mayAfter === 0).toBe(worst.some((most) => most >= limit));
          expect(found.mustAfter === 0).toBe(worst.every((most) => most >= limit));
        },
      ),
    );
  });
});

describe('what is not known', () => {
  it('no limit stated establishes nothing', () => {
    const found = said(thing({ limitUses: null, limitCycles: null, uses: 90 }));
    expect(found).toMatchObject({
      outcome: 'notEstablished',
      missing: [{ path: ['things', 0, 'limitUses'] }],
    });
    expect(only({ limitUses: null, limitCycles: null })).toMatchObject({ state: 'notEstablished' });
  });

  it('one stated limit is enough, and the other needs no count', () => {
    expect(said(thing({ limitUses: null, uses: null, cycles: 4 })).outcome).toBe('answered');
  });

  it('a count that is not known keeps it open, unless the other limit is reached', () => {
    expect(only({ uses: null, cycles: 4 }).state).toBe('notEstablished');
    expect(only({ uses: null, cycles: 30 })).toMatchObject({ state: 'replaceNow', by: 'cycles' });
  });

  it('refuses a piece or a case named twice', () => {
    const twice = [{ case: 'one' }, { case: 'one' }];
    const input = serviceLifeInput.parse({ things: [thing({}), thing({ booked: twice })] });
    expect(checkServiceLife(input).map(({ path }) => path.join('.'))).toEqual([
      'things.1.thing',
      'things.1.booked.1.case',
    ]);
  });
});
