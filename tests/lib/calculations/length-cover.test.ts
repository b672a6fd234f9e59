import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthCover } from '@/lib/calculations/lengthCover/lengthCover';
import { checkLengthCover, lengthCoverInput } from '@/lib/calculations/lengthCover/schema';
import examples from '../../fixtures/calculation-examples.json';
import { coverByEnumeration, coverOf, family, smallCase } from './lengthCases';

const [l1, l2] = examples['length-cover'];
const spread = { kind: 'spread', meanMm: 20, sdMm: 2 };
const holes = (count: number, more: object) =>
  Array.from({ length: count }, (_, at) => ({ hole: `H${at}`, family: 'f', ...more }));

describe('worked examples', () => {
  // L1: 18, 20, 22 with 1/4, 1/2, 1/4 in two holes: 1 − P(two 18) − P(two 22) = 7/8 with two 20 at hand
  const odds = [
    { lengthMm: 18, chance: 0.25 },
    { lengthMm: 20, chance: 0.5 },
    { lengthMm: 22, chance: 0.25 },
  ];
  test.each((l1?.stocks ?? []).map((stock, at) => ({ stock, expected: l1?.expect?.[at] as number })))(
    'L1: $stock',
    ({ stock, expected }) => {
      const input = {
        holes: holes(2, { need: { kind: 'odds', odds } }),
        families: [family('f', stock)],
        targetCover: null,
      };
      expect(coverOf(input).cover).toBeCloseTo(expected, 12);
    },
  );

  const made = [10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32];
  test.each(l2?.cases ?? [])('L2: $stock, longer $longerMm', ({ stock, longerMm, expect: expected }) => {
    const input = {
      holes: holes(4, { need: spread, acceptLongerMm: longerMm }),
      families: [family('f', stock as Record<number, number>, made)],
      targetCover: null,
    };
    expect(coverOf(input).cover).toBeCloseTo(expected, 5);
    // the simulation answers the same question: within four of its own standard errors
    const simulated = coverOf({ ...input, method: 'simulation', seed: 7 });
    expect(simulated.method).toMatchObject({ kind: 'simulation', trials: 20_000, seed: 7 });
    if (simulated.method.kind === 'simulation') {
      expect(Math.abs(simulated.cover - expected)).toBeLessThan(4 * simulated.method.standardError);
    }
  });
});

describe('the exact method equals writing out every outcome', () => {
  test('all needs, roundings and windows', () => {
    fc.assert(
      fc.property(smallCase, (input) => {
        expect(coverOf(input).cover).toBeCloseTo(coverByEnumeration(input), 10);
      }),
      { numRuns: 300 },
    );
  });

  test('openings in vain', () => {
    fc.assert(
      fc.property(smallCase, (input) => {
        const few = { ...input, holes: input.holes.slice(0, 2), notImplantedChance: 0.1 };
        // at most ten pieces are at hand: with more than nine extra in one hole nothing suffices
        expect(coverOf(few).cover).toBeCloseTo(coverByEnumeration(few, 0, 5), 4);
      }),
      { numRuns: 25 },
    );
  });

  test('a shared offset: against a grid twenty times finer', () => {
    fc.assert(
      fc.property(smallCase, fc.constantFrom(0.5, 1, 2), (input, sharedSdMm) => {
        const answer = coverOf({ ...input, sharedSdMm });
        let sum = 0;
        let total = 0;
        for (let z = -6; z <= 6; z += 0.025) {
          const weight = Math.exp((-z * z) / 2);
          total += weight;
          sum += weight * coverByEnumeration(input, z * sharedSdMm);
        }
        expect(Math.abs(answer.cover - sum / total)).toBeLessThan(1e-5);
      }),
      { numRuns: 12 },
    );
  });

  test('two families without a shared offset are independent', () => {
    const one = {
      holes: [{ hole: 'A', family: 'f', need: spread }],
      families: [family('f', { 18: 1, 20: 1, 22: 0 })],
    };
    const two = {
      holes: [{ hole: 'B', family: 'g', need: spread }],
      families: [family('g', { 18: 0, 20: 1, 22: 1 })],
    };
    const both = {
      holes: [...one.holes, ...two.holes],
      families: [...one.families, ...two.families],
      targetCover: null,
    };
    expect(coverOf(both).cover).toBeCloseTo(
      coverOf({ ...one, targetCover: null }).cover * coverOf({ ...two, targetCover: null }).cover,
      12,
    );
  });
});

describe('laws', () => {
  test('cover is a probability, never falls when a piece is added, and does not depend on the order', () => {
    fc.assert(
      fc.property(smallCase, fc.nat(4), (input, at) => {
        const { cover } = coverOf(input);
        expect(cover).toBeGreaterThanOrEqual(0);
        expect(cover).toBeLessThanOrEqual(1);
        const more = structuredClone(input);
        const length = more.families[0]?.lengths[at];
        if (length) length.stock = (length.stock ?? 0) + 1;
        expect(coverOf(more).cover).toBeGreaterThanOrEqual(cover - 1e-12);
        const turned = structuredClone(input);
        turned.holes.reverse();
        turned.families[0]?.lengths.reverse();
        expect(coverOf(turned).cover).toBeCloseTo(cover, 12);
      }),
    );
  });

  test('with plenty of every length only what is not made is lacking', () => {
    fc.assert(
      fc.property(smallCase, (input) => {
        const plenty = structuredClone(input);
        for (const length of plenty.families[0]?.lengths ?? []) length.stock = 9;
        const { cover, beyondRange } = coverOf(plenty);
        expect(cover).toBeCloseTo(1 - beyondRange.anyHole, 10);
      }),
    );
  });

  test('accepting longer pieces never lowers the cover', () => {
    fc.assert(
      fc.property(smallCase, (input) => {
        const wider = structuredClone(input);
        for (const hole of wider.holes) hole.acceptLongerMm += 2;
        expect(coverOf(wider).cover).toBeGreaterThanOrEqual(coverOf(input).cover - 1e-12);
      }),
    );
  });
});

describe('the smallest top-up', () => {
  /** Smallest number of added pieces that reaches the target, by trying every way to add them. */
  function fewestByTrial(
    input: ReturnType<typeof lengthCoverInput.parse>,
    target: number,
    most: number,
  ): number | null {
    const lengths = input.families[0]?.lengths ?? [];
    const reaches = (left: number, from: number, added: number[]): boolean => {
      if (left === 0) {
        const topped = structuredClone(input);
        for (const [at, pieces] of added.entries()) {
          const length = topped.families[0]?.lengths[at];
          if (length) length.stock = (length.stock ?? 0) + pieces;
        }
        return coverByEnumeration(topped) >= target;
      }
      return lengths.some(
        (_, at) => at >= from && reaches(left - 1, at, added.with(at, (added[at] ?? 0) + 1)),
      );
    };
    for (let pieces = 0; pieces <= most; pieces += 1) {
      if (
        reaches(
          pieces,
          0,
          lengths.map(() => 0),
        )
      )
        return pieces;
    }
    return null;
  }

  test('is the smallest there is, and reaches the target on the joint figure', () => {
    fc.assert(
      fc.property(smallCase, fc.constantFrom(0.5, 0.8, 0.95), (input, target) => {
        const few = { ...input, holes: input.holes.slice(0, 3), targetCover: target };
        const { topUp, cover } = coverOf(few);
        const fewest = fewestByTrial(few, target, 5);
        if (topUp.state === 'reached') expect(cover).toBeGreaterThanOrEqual(target);
        // a target that sums only reach by how they are rounded is out of reach: the next test has one
        if (topUp.state === 'outOfReach') expect(fewestByTrial(few, target + 1e-9, 5)).toBeNull();
        if (topUp.state === 'found') {
          expect(topUp.proof).toBe('smallest');
          expect(topUp.coverAfter).toBeGreaterThanOrEqual(target);
          if (fewest !== null) expect(topUp.total).toBe(fewest);
          else expect(topUp.total).toBeGreaterThan(5);
        }
        expect(['reached', 'outOfReach', 'found']).toContain(topUp.state);
      }),
      { numRuns: 40 },
    );
  });

  test('a target that is the best there could be, but for the rounding of sums, is out of reach', () => {
    // rounded down from a mean on the shortest length: half of all needs are shorter than anything made
    const { topUp } = coverOf({
      holes: [
        ...holes(1, { need: { kind: 'spread', meanMm: 14, sdMm: 0.8 }, rounding: 'down', acceptLongerMm: 0 }),
      ],
      families: [family('f', { 14: 0, 16: 0, 18: 0, 20: 0, 22: 0 })],
      targetCover: 0.5,
    });
    expect(topUp.state).toBe('outOfReach');
  });

  test('a simulation proves nothing, and says so', () => {
    const input = {
      holes: holes(2, { need: spread }),
      families: [family('f', { 16: 0, 18: 1, 20: 1, 22: 1, 24: 0 })],
    };
    const { topUp } = coverOf({ ...input, method: 'simulation', targetCover: 0.9 });
    expect(topUp).toMatchObject({ state: 'found', proof: 'notProven' });
  });

  test('a target beyond what is made is out of reach, with the best there could be', () => {
    // mean on the longest length: half of all needs are longer than anything made, but for rounding by half a step
    const input = {
      holes: holes(1, { need: { kind: 'spread', meanMm: 22, sdMm: 2 }, rounding: 'up' }),
      families: [family('f', { 18: 1, 20: 1, 22: 1 })],
    };
    const { topUp, beyondRange } = coverOf(input);
    expect(topUp).toMatchObject({ state: 'outOfReach', target: 0.95 });
    // Φ(0) − Φ(−3) = 0.49865 (tables of the normal distribution)
    expect(1 - beyondRange.anyHole).toBeCloseTo(0.49865, 5);
  });
});

describe('what cannot be said', () => {
  test('a length nobody stated and a stock nobody counted are both missing, with their places', () => {
    const answer = lengthCover(
      lengthCoverInput.parse({
        holes: [{ hole: 'S1', family: 'f', need: { kind: 'notStated' } }],
        families: [
          {
            family: 'f',
            lengths: [
              { lengthMm: 18, stock: null },
              { lengthMm: 20, stock: 1 },
            ],
          },
        ],
      }),
    );
    expect(answer).toMatchObject({
      outcome: 'notEstablished',
      known: null,
      missing: [{ path: ['holes', 0, 'need'] }, { path: ['families', 0, 'lengths', 0, 'stock'] }],
    });
  });

  test('lengths that are not made, chances above one and names given twice are all refused at once', () => {
    const problems = checkLengthCover(
      lengthCoverInput.parse({
        holes: [
          { hole: 'S1', family: 'f', need: { kind: 'exact', lengthMm: 19 } },
          { hole: 'S1', family: 'g', need: { kind: 'exact', lengthMm: 18 } },
          {
            hole: 'S3',
            family: 'f',
            need: {
              kind: 'odds',
              odds: [
                { lengthMm: 18, chance: 0.6 },
                { lengthMm: 20, chance: 0.6 },
              ],
            },
          },
        ],
        families: [family('f', { 18: 1, 20: 1 })],
      }),
    );
    expect(problems.map(({ path, code }) => [path.join('.'), code])).toEqual([
      ['holes.1.hole', 'duplicate'],
      ['holes.1.family', 'unknown-family'],
      ['holes.0.need.lengthMm', 'length-not-made'],
      ['holes.2.need.odds', 'above-one'],
    ]);
  });

  test('many holes that all differ, with wide windows, are simulated, and the answer says so', () => {
    const many = Array.from({ length: 30 }, (_, at) => ({
      hole: `H${at}`,
      family: 'f',
      need: { kind: 'spread', meanMm: 20 + at / 10, sdMm: 2 },
      acceptLongerMm: 6,
    }));
    const stock = Object.fromEntries(Array.from({ length: 15 }, (_, at) => [12 + 2 * at, 4]));
    const { method, cover } = coverOf({
      holes: many,
      families: [family('f', stock)],
      trials: 2000,
      targetCover: null,
    });
    expect(method.kind).toBe('simulation');
    expect(cover).toBeGreaterThan(0);
    expect(cover).toBeLessThan(1);
  });
});
