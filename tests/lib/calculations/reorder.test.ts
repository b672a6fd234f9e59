import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { z } from 'zod';
import { reorder } from '@/lib/calculations/reorder/reorder';
import { checkReorder, type ReorderOutput, reorderInput } from '@/lib/calculations/reorder/schema';

type Raw = z.input<typeof reorderInput>;

function answered(raw: Raw): ReorderOutput {
  const answer = reorder(reorderInput.parse(raw));
  if (answer.outcome !== 'answered') throw new Error(`not established: ${answer.missing[0]?.what}`);
  return answer.answer;
}

const R1: Raw = {
  demand: { kind: 'stated', piecesPerWeek: 2 },
  leadDays: 7,
  reviewDays: 7,
  service: 0.95,
  lots: [{ pieces: 3 }],
  onOrder: 2,
};

// invented case R1: worked by hand and recomputed independently
describe('worked example R1', () => {
  it.each([
    [{ service: 0.95 }, { orderUpTo: 8, order: 3 }],
    [{ service: 0.99 }, { orderUpTo: 9, order: 4 }],
    [
      { service: 0.95, packOf: 5 },
      { order: 5, packs: 1 },
    ],
    [
      { service: 0.95, committed: 2, packOf: 5 },
      { position: 3, order: 5 },
    ],
  ])('%j', (given, expected) => {
    expect(answered({ ...R1, ...given })).toMatchObject(expected);
  });

  it('says why in one sentence', () => {
    expect(answered({ ...R1, committed: 2, packOf: 5 }).sentence).toBe(
      'Order 5 (1 × 5): 8 cover the 14 days until the order after this one can be here in 95 % of such times (about 4 expected beyond booked cases, Poisson), and there are 3 at hand and 2 on order, less 2 for booked cases: 3.',
    );
  });
});

describe('use-by', () => {
  // 2 a week for 21 days: 6 expected; scipy 1.17.1 stats.poisson.sf(q - 1, 6) >= 0.9 up to q = 3
  it('holds an order to what is asked for in time', () => {
    const held = answered({ ...R1, lots: [], onOrder: 0, shelfLifeDays: 14 });
    expect(held).toMatchObject({ orderUpTo: 8, lacking: 8, useByLimit: 3, order: 3 });
    expect(held.sentence).toMatch(
      /^Order 3 rather than 8: only 3 more can be used before their use-by with 90 %; /,
    );
    expect(answered({ ...R1, lots: [], onOrder: 0, shelfLifeDays: 14, packOf: 2 }).order).toBe(2);
    expect(answered({ ...R1, lots: [], onOrder: 0, shelfLifeDays: 14, packOf: 5 })).toMatchObject({
      order: 0,
    });
  });

  it('does not count what is past it, nor what passes it before it is asked for', () => {
    // past use-by: 4 do not count; 6 are good for 6 more days, in which 2 are asked for
    const lots = [
      { pieces: 4, daysLeft: -1 },
      { pieces: 6, daysLeft: 6 },
    ];
    expect(answered({ ...R1, lots, onOrder: 0 })).toMatchObject({
      onHand: 6,
      passing: 4,
      position: 2,
      order: 6,
    });
    // good through the last day: with 0 days left it is still there today
    expect(answered({ ...R1, lots: [{ pieces: 6, daysLeft: 0 }], onOrder: 0 })).toMatchObject({
      onHand: 6,
      passing: 6,
    });
  });

  it('of a shelf life nobody stated sets no limit, and says so', () => {
    const answer = reorder(reorderInput.parse(R1));
    expect(answer.outcome === 'answered' && answer.answer.useByLimit).toBeNull();
    expect(answer.working.find(({ label }) => label === 'Use-by limit')?.value).toBe('shelf life not stated');
  });
});

describe('from the record', () => {
  const record = (days: number, uses: readonly (readonly [number, number?, number?])[]): Raw => ({
    ...R1,
    lots: [],
    onOrder: 0,
    demand: {
      kind: 'record',
      days,
      uses: uses.map(([day, pieces = 1, bookedDaysBefore]) => ({
        day,
        pieces,
        bookedDaysBefore: bookedDaysBefore ?? null,
      })),
    },
  });
  const every = (step: number, pieces?: number, booked?: number) =>
    Array.from({ length: Math.floor(364 / step) }, (_, at) => [at * step, pieces, booked] as const);

  it('one a week, evenly: Poisson by the plain mean', () => {
    const answer = answered(record(364, every(7)));
    expect(answer).toMatchObject({ model: 'poisson', why: 'varianceWithinMean', expected: 2, orderUpTo: 5 });
    expect(answer.demandClass).toEqual({ class: 'smooth', interval: 1, cv2: 0 });
    expect(answer.perWeek).toMatchObject({ mean: 1, by: 'mean' });
  });

  it('weeks that vary more than their mean: negative binomial, by mean and variance', () => {
    // every fourth week four cases of one piece on four days: mean 1, variance 156 ÷ 51
    const uses = Array.from({ length: 13 }, (_, at) =>
      [0, 1, 2, 3].map((day) => [at * 28 + day] as const),
    ).flat();
    const answer = answered(record(364, uses));
    expect(answer).toMatchObject({ model: 'negativeBinomial', why: 'varianceAboveMean' });
    expect(answer.perWeek.variance / answer.perWeek.mean).toBeCloseTo(156 / 51, 10);
    expect(answer.fits.map(({ kind }) => kind)).toEqual(['negativeBinomial', 'poisson']);
    expect(answer.fits[0]?.aic).toBeLessThan(answer.fits[1]?.aic ?? 0);
  });

  it('several per case: compound Poisson', () => {
    const answer = answered(record(364, every(7, 3)));
    expect(answer).toMatchObject({
      model: 'compoundPoisson',
      why: 'severalPerCase',
      expected: 6,
      variance: 18,
    });
    expect(answer.orderUpTo % 3).toBe(0);
  });

  it('several per case that come in clusters: negative binomial', () => {
    const uses = Array.from({ length: 8 }, (_, at) =>
      [0, 1, 2, 3, 4].map((day) => [at * 42 + day, 2] as const),
    ).flat();
    expect(answered(record(364, uses))).toMatchObject({ model: 'negativeBinomial', why: 'clustered' });
  });

  it('sparse demand: by size and interval, less its bias', () => {
    // one piece every fourth week: 1 ÷ 4 × 0.95, whatever α smooths
    const answer = answered(record(364, every(28)));
    expect(answer.demandClass?.class).toBe('intermittent');
    expect(answer.perWeek.by).toBe('sizeInterval');
    expect(answer.perWeek.mean).toBeCloseTo(
      // the first demand comes in the first week, every later one four weeks on: 4 − 3 × 0.9^12
      0.95 / (4 - 3 * 0.9 ** 12),
      10,
    );
  });

  it('forecasts only what nobody has booked', () => {
    // all booked 14 days before: of the next 14 days all is known; of those 7 days before, half
    expect(answered(record(364, every(7, 1, 14)))).toMatchObject({
      expected: 0,
      orderUpTo: 0,
      unbookedShare: 0,
    });
    expect(answered(record(364, every(7, 1, 7)))).toMatchObject({ expected: 1, unbookedShare: 0.5 });
    expect(answered(record(364, every(7, 1, 0)))).toMatchObject({ expected: 2, unbookedShare: 1 });
  });

  it('a test of the fit: seen against expected weeks, and poor fits are said', () => {
    // 26 weeks of none and 26 of two, one a case: mean 1. Poisson expects 19.13, 19.13, and 13.74 of two or more
    const uses = Array.from({ length: 26 }, (_, at) => [[at * 14], [at * 14 + 1]] as const).flat();
    const [chosen, poisson] = answered(record(364, uses)).fits;
    expect(chosen?.kind).toBe('negativeBinomial');
    const e = 52 / Math.E;
    const chi = (26 - e) ** 2 / e + e + (26 - (52 - 2 * e)) ** 2 / (52 - 2 * e);
    expect(poisson?.test?.degrees).toBe(1);
    expect(poisson?.test?.chiSquare).toBeCloseTo(chi, 8);
    expect(poisson?.test?.p).toBeLessThan(0.001);
  });
});

describe('not established', () => {
  const missing = (raw: Raw) => {
    const answer = reorder(reorderInput.parse(raw));
    return answer.outcome === 'notEstablished' ? answer.missing : [];
  };
  const recorded = (days: number, uses: { day: number; pieces: number }[]): Raw => ({
    ...R1,
    demand: { kind: 'record', days, uses },
  });

  it('all that is missing at once, each with its place', () => {
    const found = missing({ ...recorded(90, [{ day: 3, pieces: 1 }]), leadDays: null });
    expect(found.map(({ path }) => path.join('.'))).toEqual(['leadDays', 'demand.uses']);
    expect(found[1]?.what).toBe('12 whole weeks are on record, 13 are needed');
  });

  it('thirteen weeks are enough', () => {
    expect(missing(recorded(91, [{ day: 3, pieces: 1 }]))).toEqual([]);
  });

  // k = 0: 1 − 0.05^(1/n), the exact upper 95 % bound; n = 104: 0.0284
  it('no use at all is not the same as no demand', () => {
    expect(missing(recorded(728, []))[0]?.what).toBe(
      'no use in 104 weeks, which allows up to 0.03 a week, 95 % sure',
    );
  });

  it('a use beyond the record is a fault of the input', () => {
    expect(checkReorder(reorderInput.parse(recorded(91, [{ day: 91, pieces: 1 }])))).toMatchObject([
      { path: ['demand', 'uses', 0, 'day'], code: 'beyond-record' },
    ]);
  });
});

describe('whatever is asked', () => {
  const asked = fc.record({
    piecesPerWeek: fc.double({ min: 0, max: 20, noNaN: true }),
    times: fc.double({ min: 1, max: 4, noNaN: true }),
    leadDays: fc.integer({ min: 0, max: 60 }),
    reviewDays: fc.integer({ min: 1, max: 28 }),
    service: fc.double({ min: 0.5, max: 0.999, noNaN: true }),
    lots: fc.array(
      fc.record({
        pieces: fc.integer({ min: 0, max: 20 }),
        daysLeft: fc.option(fc.integer({ min: -20, max: 200 })),
      }),
      { maxLength: 5 },
    ),
    onOrder: fc.integer({ min: 0, max: 30 }),
    committed: fc.integer({ min: 0, max: 30 }),
    toRefill: fc.integer({ min: 0, max: 10 }),
    packOf: fc.integer({ min: 1, max: 10 }),
    shelfLifeDays: fc.option(fc.integer({ min: 0, max: 900 })),
  });
  const raw = ({
    piecesPerWeek,
    times,
    ...rest
  }: typeof asked extends fc.Arbitrary<infer T> ? T : never): Raw => ({
    ...rest,
    demand: { kind: 'stated', piecesPerWeek, variancePerWeek: piecesPerWeek * times },
  });

  test('the position is what there is and comes less what is promised', () => {
    fc.assert(
      fc.property(asked, (given) => {
        const answer = answered(raw(given));
        const good = given.lots.filter(({ daysLeft }) => daysLeft === null || daysLeft >= 0);
        expect(answer.onHand).toBe(good.reduce((sum, { pieces }) => sum + pieces, 0));
        expect(answer.position + answer.passing + given.committed + given.toRefill).toBe(
          answer.onHand + given.onOrder,
        );
        expect(answer.passing).toBeGreaterThanOrEqual(0);
        expect(answer.passing).toBeLessThanOrEqual(answer.onHand);
      }),
    );
  });

  test('whole packs, never past what can be used, and the level is reached where use-by allows it', () => {
    fc.assert(
      fc.property(asked, (given) => {
        const answer = answered(raw(given));
        expect(answer.order % given.packOf).toBe(0);
        expect(answer.packs * given.packOf).toBe(answer.order);
        if (answer.useByLimit !== null) expect(answer.order).toBeLessThanOrEqual(answer.useByLimit);
        if (answer.useByLimit === null) {
          expect(answer.position + answer.order).toBeGreaterThanOrEqual(answer.orderUpTo);
          expect(answer.serviceWith).toBeGreaterThanOrEqual(given.service);
        }
        // not a pack more than the level asks for
        expect(answer.order).toBeLessThan(answer.lacking + given.packOf);
      }),
    );
  });

  test('a higher service level never orders less', () => {
    fc.assert(
      fc.property(asked, fc.double({ min: 0.5, max: 0.999, noNaN: true }), (given, other) => {
        const [low, high] = [given.service, other]
          .sort((a, b) => a - b)
          .map((service) => answered(raw({ ...given, service })));
        expect(high?.orderUpTo).toBeGreaterThanOrEqual(low?.orderUpTo ?? 0);
        expect(high?.order).toBeGreaterThanOrEqual(low?.order ?? 0);
      }),
    );
  });

  test('more demand never has a lower level; with nothing passing its use-by it never orders less', () => {
    fc.assert(
      fc.property(asked, fc.double({ min: 1, max: 3, noNaN: true }), (given, times) => {
        const lots = given.lots.map((lot) => ({ ...lot, daysLeft: null }));
        const at = (factor: number) =>
          answered(raw({ ...given, lots, piecesPerWeek: given.piecesPerWeek * factor }));
        expect(at(times).orderUpTo).toBeGreaterThanOrEqual(at(1).orderUpTo);
        expect(at(times).order).toBeGreaterThanOrEqual(at(1).order);
      }),
    );
  });
});
