import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceOfAsMany, countTogether, openedTogether } from '@/lib/review/together';

describe('the chance of as many cases together', () => {
  // scipy 1.17.1: scipy.stats.hypergeom.sf(both - 1, all, own, other)
  it.each([
    [200, 60, 40, 20, 0.00241542656715092],
    [1_000, 100, 50, 5, 0.5730845672762301],
    [1_000, 100, 50, 4, 0.7567471479339877],
    [40_000, 2_500, 1_800, 160, 4.337172974292378e-6],
    [50, 10, 10, 10, 9.73493886604903e-11],
    [120, 30, 80, 15, 0.9922695607542068],
    [200_000, 12_000, 9_000, 700, 1.6226297055388027e-12],
    [30, 20, 20, 10, 1],
    [30, 20, 20, 11, 0.9938506937007686],
  ])(
    'of %i cases, %i with the one and %i with the other, %i with both, is scipy’s',
    (all, own, other, both, p) => {
      const chance = chanceOfAsMany({ all, own, other, both });
      expect(Math.abs(chance - p)).toBeLessThanOrEqual(1e-9 * p + 1e-15);
    },
  );

  // R. A. Fisher, The Design of Experiments (1935): eight cups, four of each, all told rightly: 1 in 70
  it('is Fisher’s 1 in 70 for the tea', () => {
    expect(chanceOfAsMany({ all: 8, own: 4, other: 4, both: 4 })).toBeCloseTo(1 / 70, 14);
  });

  it('is the same whichever is called the one, falls as more are together, and is certain at the least', () => {
    const sizes = fc.integer({ min: 1, max: 400 }).chain((all) =>
      fc.record({
        all: fc.constant(all),
        own: fc.integer({ min: 0, max: all }),
        other: fc.integer({ min: 0, max: all }),
      }),
    );
    fc.assert(
      fc.property(sizes, ({ all, own, other }) => {
        let before = 1;
        const least = Math.max(0, own + other - all);
        for (let both = least; both <= Math.min(own, other) + 1; both += 1) {
          const one = chanceOfAsMany({ all, own, other, both });
          const turned = chanceOfAsMany({ all, own: other, other: own, both });
          expect(Math.abs(one - turned)).toBeLessThan(1e-9);
          expect(one).toBeLessThanOrEqual(before + 1e-9);
          before = one;
        }
        expect(chanceOfAsMany({ all, own, other, both: least })).toBe(1);
        expect(before).toBe(0);
      }),
      { numRuns: 60 },
    );
  });
});

const cases = (...groups: [times: number, ...there: string[]][]) =>
  groups.flatMap(([times, ...there]) => Array.from({ length: times }, () => new Set(there)));

describe('configurations opened together', () => {
  it('are counted by case, whatever else was there, and a case without any set is none', () => {
    const counted = countTogether(cases([3, 'a', 'b'], [2, 'a'], [1, 'b', 'c'], [4]), 'a');
    expect(counted).toEqual({
      all: 6,
      own: 5,
      others: [
        { id: 'b', cases: 4, both: 3 },
        { id: 'c', cases: 1, both: 0 },
      ],
    });
  });

  it('are said to be oftener only past chance after all comparisons, and nothing is said of few cases', () => {
    const { all, own, others } = countTogether(
      cases([30, 'a', 'b'], [30, 'a'], [10, 'b'], [8, 'a', 'd'], [60, 'e'], [12, 'a', 'e'], [50, 'f']),
      'a',
    );
    const { compared, pairs } = openedTogether(all, own, others);
    // b, e and f have cases enough; f is compared though it never came with a
    expect(compared).toBe(3);
    expect(pairs.map(({ otherId, verdict }) => [otherId, verdict])).toEqual([
      ['b', 'oftener'],
      ['e', 'notShown'],
      ['d', 'tooFew'],
    ]);
    const [b] = pairs;
    expect(b?.chanceOfAny).toBeCloseTo((b?.chance ?? 0) * 3, 12);
    expect(b?.expected).toBeCloseTo((80 * 40) / 200, 12);
    expect(b?.lift).toBeCloseTo(30 / 16, 12);
  });

  it('a pair that would look striking alone is not said among many', () => {
    const alone = openedTogether(100, 20, [{ id: 'b', cases: 20, both: 8 }]);
    const many = openedTogether(100, 20, [
      { id: 'b', cases: 20, both: 8 },
      ...Array.from({ length: 59 }, (_, at) => ({ id: `o${at}`, cases: 20, both: 0 })),
    ]);
    expect(alone.pairs[0]?.verdict).toBe('oftener');
    expect(many.pairs[0]?.verdict).toBe('notShown');
  });
});
