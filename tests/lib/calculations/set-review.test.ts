import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { casesNeeded, upperBound } from '@/lib/calculations/setReview/bound';
import { chanceAbove, fitDemand, smallestQuantity } from '@/lib/calculations/setReview/demand';
import { checkSetReview, setReviewInput } from '@/lib/calculations/setReview/schema';
import { setReview } from '@/lib/calculations/setReview/setReview';

/** Invented cases, worked by hand and recomputed independently; see the file. */
const [V1] = JSON.parse(readFileSync('tests/fixtures/calculation-examples.json', 'utf8'))['set-review'];
/** Published values with their sources; see the file. */
const published = JSON.parse(readFileSync('tests/fixtures/published-use.json', 'utf8'));

const COSTS = {
  cases: V1.cases as number,
  keepPencePerPiece: V1.keepPencePerCase,
  pouchPence: V1.pouchPence,
  fetchMinutes: V1.delayMinutes,
  theatrePencePerMinute: V1.theatrePencePerMinute,
};
const line = (more: Record<string, unknown>) => ({
  line: 'forceps',
  quantity: 1,
  mustHaveClass: 4,
  usedIn: [],
  ...more,
});
const reviewed = (lines: Record<string, unknown>[], costs: Record<string, unknown> = {}) =>
  setReview(setReviewInput.parse({ ...COSTS, ...costs, lines }));
function only(more: Record<string, unknown>, costs: Record<string, unknown> = {}) {
  const said = reviewed([line(more)], costs);
  const answer = said.outcome === 'answered' ? said.answer : said.known;
  const [first] = answer?.lines ?? [];
  if (!first) throw new Error('the line was reviewed');
  return first;
}
const used = (cases: number) => [{ pieces: 1, cases }];

describe('worked example V1', () => {
  it('9 of 60, fetched from the store: 913 pence a case against 40, and it is kept', () => {
    const [expected] = V1.lines;
    const found = only({ usedIn: used(expected.uses), pouchInRoom: false });
    expect(found.fetched.penceAtEstimate).toBe(expected.expectedPencePerCaseIfFetched);
    expect(found.verdict).toBe(expected.verdict);
  });

  it('9 of 60 with a pouch in the room: 13 pence a case, and a pouch costs less', () => {
    const expected = V1.lines[1];
    const found = only({ usedIn: used(expected.uses), pouchInRoom: true });
    expect(found.inRoom.penceAtEstimate).toBe(expected.expectedPencePerCase);
    expect(found.verdict).toBe('pouch');
  });

  it('never used in 60: at most 4.87 %, 296 pence at the bound, kept if it must be fetched', () => {
    const expected = V1.lines[2];
    const found = only({});
    expect(found.upperBound).toBeCloseTo(expected.upper95, 4);
    expect(found.fetched.penceAtBound).toBe(expected.penceAtBoundIfFetched);
    expect(found.verdict).toBe('keepIfFetched');
  });

  it('a back-up is protected whatever its figures say', () => {
    expect(V1.lines[3]).toMatchObject({ backUp: true, verdict: 'protected' });
    for (const usedIn of [[], used(1), used(60)])
      for (const pouchInRoom of [true, false, null])
        expect(only({ mustHaveClass: 3, usedIn, pouchInRoom }).verdict).toBe('protected');
  });
});

// scipy 1.17.1, stats.beta.ppf(confidence, k + 1, n - k): the one-sided limit of Clopper and Pearson
describe('the bound is that of the reference package', () => {
  it.each([
    [0, 60, 0.95, 0.04870291331009749],
    [9, 60, 0.95, 0.2471594674662178],
    [1, 10, 0.95, 0.39416330243650466],
    [59, 60, 0.95, 0.9991454770730508],
    [3, 212, 0.95, 0.036165614232833494],
    [0, 212, 0.95, 0.014031441295053348],
    [120, 5_000, 0.95, 0.027873652385490822],
    [7, 40, 0.99, 0.35646243612638706],
    [0, 1_000_000, 0.95, 2.9957277863525433e-6],
    [2_500, 1_000_000, 0.95, 0.0025837153499791454],
  ])('%i of %i at %f', (k, n, confidence, bound) => {
    expect(upperBound(k, n, confidence) / bound).toBeCloseTo(1, 9);
  });

  it('every case with a use bounds nothing', () => expect(upperBound(60, 60, 0.95)).toBe(1));

  // the "rule of three" of the clinical literature: with none in n, at most about 3/n (Hanley & Lippman-Hand, JAMA 1983, from memory)
  it('with none seen it is a little under three in n', () => {
    for (const n of [30, 100, 1_000, 100_000]) {
      expect(upperBound(0, n, 0.95)).toBeLessThan(3 / n);
      expect(upperBound(0, n, 0.95)).toBeGreaterThan(0.95 * (3 / n));
    }
  });

  it('is above what was seen, grows with uses and shrinks with cases', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.nat(),
        fc.double({ min: 0.5, max: 0.99, noNaN: true }),
        (n, raw, c) => {
          const k = raw % n;
          const bound = upperBound(k, n, c);
          expect(bound).toBeGreaterThan(k / n);
          expect(upperBound(k + 1, n, c)).toBeGreaterThan(bound);
          expect(upperBound(k, n + 1, c)).toBeLessThan(bound);
        },
      ),
    );
  });

  it('the cases needed are the fewest that bound a risk never seen', () => {
    // ln 0.05 / ln 0.99 = 298.07
    expect(casesNeeded(0.01, 0.95)).toBe(299);
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.5, noNaN: true }), (risk) => {
        const n = casesNeeded(risk, 0.95);
        expect(upperBound(0, n, 0.95)).toBeLessThanOrEqual(risk * (1 + 1e-6));
        if (n > 1) expect(upperBound(0, n - 1, 0.95)).toBeGreaterThan(risk * (1 - 1e-6));
      }),
    );
  });
});

describe('how many are asked for in a case', () => {
  const poisson = (mean: number) => ({ kind: 'poisson' as const, mean, variance: mean });

  // cumulative Poisson tables; scipy 1.17.1, stats.poisson.cdf
  it('Poisson tails are those of the tables', () => {
    for (const [mean, cdf] of Object.entries(published.poisson.cdf as Record<string, number[]>))
      for (const [q, within] of cdf.entries())
        expect(1 - chanceAbove(q, poisson(Number(mean)))).toBeCloseTo(within, 4);
  });

  // tables of Poisson quantiles; scipy 1.17.1, stats.poisson.ppf
  it('the smallest quantity at a service level is that of the tables', () => {
    const { quantiles, levels } = published.poisson as {
      quantiles: Record<string, number[]>;
      levels: number[];
    };
    for (const [mean, row] of Object.entries(quantiles))
      row.forEach((quantity, at) => {
        const risk = 1 - (levels[at] as number);
        const found = smallestQuantity([], 10, poisson(Number(mean)), {
          risk: risk * (1 + 1e-12),
          confidence: 0.95,
        });
        expect(found.fitted).toBe(quantity);
      });
  });

  // r = m² ÷ (v − m), p = m ÷ v; recomputed, and scipy 1.17.1, stats.nbinom.ppf
  it('negative binomial quantities too', () => {
    for (const { m, v, q } of published['negative-binomial'].q95q99) {
      const model = { kind: 'negativeBinomial' as const, mean: m, variance: v };
      [0.05, 0.01].forEach((risk, at) => {
        expect(smallestQuantity([], 10, model, { risk, confidence: 0.95 }).fitted).toBe(q[at]);
      });
    }
    // scipy 1.17.1, stats.nbinom.sf(2, m*m/(v-m), m/v) with m = 0.5, v = 0.9
    expect(chanceAbove(2, { kind: 'negativeBinomial', mean: 0.5, variance: 0.9 })).toBeCloseTo(
      0.04559844703834856,
      12,
    );
  });

  it('the model has the mean and variance of all cases, those without a use among them', () => {
    const { mean, variance, kind } =
      fitDemand(
        [
          { pieces: 1, cases: 6 },
          { pieces: 4, cases: 4 },
        ],
        20,
      ) ?? {};
    const seen = [...Array(10).fill(0), ...Array(6).fill(1), ...Array(4).fill(4)];
    const m = seen.reduce((a, b) => a + b) / 20;
    expect(mean).toBeCloseTo(m, 12);
    expect(variance).toBeCloseTo(seen.reduce((a, x) => a + (x - m) ** 2, 0) / 19, 12);
    expect(kind).toBe('negativeBinomial');
    expect(fitDemand([{ pieces: 1, cases: 10 }], 20)?.kind).toBe('poisson');
    expect(fitDemand([], 20)).toBeNull();
  });

  it('running out is more asked for than is kept, and a quantity seen is enough exactly from there on', () => {
    const usedIn = [
      { pieces: 1, cases: 14 },
      { pieces: 2, cases: 6 },
      { pieces: 3, cases: 1 },
    ];
    const found = only({ quantity: 2, usedIn }, { risk: 0.02 });
    expect(found.runsOut).toMatchObject({ cases: 1, seen: 1 / 60 });
    expect(found.smallestQuantity.seen).toBe(2);
    expect(only({ quantity: 2, usedIn }, { risk: 0.01 }).smallestQuantity.seen).toBe(3);
    // 60 cases cannot show 1 %; 299 could
    expect(found.smallestQuantity.atBound).toBeNull();
    expect(only({ usedIn }, { cases: 299, risk: 0.01 }).smallestQuantity.atBound).toBe(3);
  });
});

describe('published comparison lines', () => {
  const { shareUsed, pouchBelow } = { shareUsed: [0.13, 0.219], pouchBelow: [0.34 / 0.81, 0.47 / 0.84] };

  // Stockert & Langerman 2014 and Mhlaba et al. 2015, as the fixture quotes them
  it('stand beside the figures with their sources', () => {
    const quoted = published['instrument-use'].source as string;
    expect(quoted).toContain('13.0-21.9 %');
    expect(quoted).toContain('0.34/0.81, 0.47/0.84');
    const said = reviewed([line({ usedIn: used(9) }), line({ line: 'other', usedIn: used(30) })]);
    if (said.outcome !== 'answered') throw new Error('nothing is missing');
    const [rare, often] = said.answer.lines;
    expect(rare?.comparison).toMatchObject({
      stands: 'below',
      lowest: pouchBelow[0],
      highest: pouchBelow[1],
    });
    expect(often?.comparison).toMatchObject({ stands: 'within', source: expect.stringContaining('Mhlaba') });
    expect(said.answer.shareUsed).toMatchObject({
      share: (0.15 + 0.5) / 2,
      comparison: { stands: 'above', lowest: shareUsed[0], highest: shareUsed[1] },
    });
  });
});

describe('what is not known', () => {
  it('no cases establish nothing', () => {
    expect(reviewed([line({})], { cases: 0 })).toMatchObject({ outcome: 'notEstablished', known: null });
  });

  it('a cost that is not stated leaves the verdict open, and the rate and bound known', () => {
    for (const field of ['keepPencePerPiece', 'pouchPence', 'fetchMinutes', 'theatrePencePerMinute']) {
      const said = reviewed([line({ usedIn: used(9) })], { [field]: null });
      expect(said).toMatchObject({ outcome: 'notEstablished', missing: [{ path: [field] }] });
      const found = only({ usedIn: used(9) }, { [field]: null });
      expect(found).toMatchObject({ uses: 9, useRate: 0.15, verdict: null });
    }
    // what needs no waiting is still known
    expect(only({ usedIn: used(9), pouchInRoom: true }, { fetchMinutes: null }).verdict).toBe('pouch');
  });

  it('a line whose use nobody recorded is named, never taken as unused', () => {
    const said = reviewed([line({ usedIn: null }), line({ line: 'other' })]);
    expect(said).toMatchObject({ outcome: 'notEstablished', missing: [{ path: ['lines', 0, 'usedIn'] }] });
    if (said.outcome !== 'notEstablished') throw new Error('one is missing');
    expect(said.known?.lines.map((one) => one.line)).toEqual(['other']);
  });

  it('refuses what contradicts itself, all at once', () => {
    const input = setReviewInput.parse({
      ...COSTS,
      lines: [line({ usedIn: used(61) }), line({ usedIn: [...used(1), ...used(2)] })],
    });
    expect(checkSetReview(input).map(({ path, code }) => [path.join('.'), code])).toEqual([
      ['lines.0.usedIn', 'more-uses-than-cases'],
      ['lines.1.line', 'duplicate'],
      ['lines.1.usedIn', 'duplicate'],
    ]);
  });
});

it('more uses never speak more for a pouch, and a pouch in the room never less than one fetched', () => {
  const rank = { pouch: 0, notShown: 1, keep: 2 };
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 59 }),
      fc.integer({ min: 0, max: 500 }),
      fc.integer({ min: 0, max: 500 }),
      (k, keep, pouch) => {
        const costs = { keepPencePerPiece: keep, pouchPence: pouch };
        const [fewer, more] = [k, k + 1].map((uses) => only({ usedIn: uses === 0 ? [] : used(uses) }, costs));
        if (!fewer || !more) throw new Error('both are there');
        for (const way of ['fetched', 'inRoom'] as const)
          expect(rank[more[way].verdict ?? 'keep']).toBeGreaterThanOrEqual(
            rank[fewer[way].verdict ?? 'pouch'],
          );
        expect(rank[fewer.inRoom.verdict ?? 'keep']).toBeLessThanOrEqual(
          rank[fewer.fetched.verdict ?? 'pouch'],
        );
      },
    ),
  );
});
