import lnFactorial from '@stdlib/math-base-special-factorialln';

/** Cases below which nothing is said: of all, and of each of the two. Our own choice. */
export const LEAST_CASES_OF_ALL = 50;
export const LEAST_CASES_OF_EACH = 10;
/** Chance, after all comparisons, below which "oftener than by chance" is said. The usual 5 %. */
export const TOGETHER_ALPHA = 0.05;

/** How often two configurations were opened in one case, against what chance alone would give. */
export interface Together {
  otherId: string;
  /** Cases of the time with any set at all, with this one, with the other, with both. */
  all: number;
  own: number;
  other: number;
  both: number;
  shareOfOwn: number;
  shareOfOther: number;
  /** Cases with both, were each opened without regard to the other: `own × other ÷ all`. */
  expected: number;
  /** `both ÷ expected`: 1 as by chance, 2 twice as often. */
  lift: number;
  /** Chance of as many or more by chance alone (Fisher's exact test, one-sided), and times the number of pairs compared (Bonferroni). */
  chance: number;
  chanceOfAny: number;
  /** What may be said: too few cases, oftener than by chance, or not shown to be. */
  verdict: 'tooFew' | 'oftener' | 'notShown';
}

/**
 * P(X ≥ both) for X hypergeometric: of `all` cases `own` hold the one, and of them the other was opened in `other`. Exact, by the
 * logarithms of factorials; terms are added from the smaller, and what lies below the last bit of the sum ends it.
 */
export function chanceOfAsMany({
  all,
  own,
  other,
  both,
}: Pick<Together, 'all' | 'own' | 'other' | 'both'>): number {
  const least = Math.max(0, own + other - all);
  const most = Math.min(own, other);
  if (both <= least) return 1;
  if (both > most) return 0;
  const lnAll = lnChoose(all, other);
  const term = (k: number) => Math.exp(lnChoose(own, k) + lnChoose(all - own, other - k) - lnAll);
  // from the mode outwards terms only fall: the shorter way round is exact enough where the tail is the larger part
  const mean = (own * other) / all;
  if (both > mean) return sumDown(term, both, most, 1);
  return Math.max(0, 1 - sumDown(term, both - 1, least, -1));
}

function sumDown(term: (k: number) => number, from: number, to: number, step: 1 | -1): number {
  let sum = 0;
  for (let k = from; step > 0 ? k <= to : k >= to; k += step) {
    const next = term(k);
    sum += next;
    if (next < sum * Number.EPSILON) break;
  }
  return Math.min(1, sum);
}

const lnChoose = (n: number, k: number): number => lnFactorial(n) - lnFactorial(k) - lnFactorial(n - k);

/** In how many cases there was any configuration, this one, and each other with and without it. */
export function countTogether(
  cases: Iterable<ReadonlySet<string>>,
  id: string,
): { all: number; own: number; others: { id: string; cases: number; both: number }[] } {
  const counts = new Map<string, { cases: number; both: number }>();
  let [all, own] = [0, 0];
  for (const there of cases) {
    if (there.size === 0) continue;
    all += 1;
    const withOwn = there.has(id);
    if (withOwn) own += 1;
    for (const kind of there) {
      const one = counts.get(kind) ?? { cases: 0, both: 0 };
      one.cases += 1;
      if (withOwn) one.both += 1;
      counts.set(kind, one);
    }
  }
  counts.delete(id);
  return { all, own, others: [...counts].map(([kind, one]) => ({ id: kind, ...one })) };
}

/**
 * What the counts of every other configuration say, those opened oftenest with this one first. Those never opened with it are
 * compared like the rest, and not listed.
 *
 * @returns `compared`: how many had cases enough to be compared
 */
export function openedTogether(
  all: number,
  own: number,
  others: readonly { id: string; cases: number; both: number }[],
): { compared: number; pairs: Together[] } {
  const enough = (cases: number) => all >= LEAST_CASES_OF_ALL && Math.min(own, cases) >= LEAST_CASES_OF_EACH;
  const compared = others.filter(({ cases }) => enough(cases)).length;
  const pairs = others
    .filter(({ both }) => both > 0)
    .map(({ id, cases, both }): Together => {
      const expected = all === 0 ? 0 : (own * cases) / all;
      const chance = chanceOfAsMany({ all, own, other: cases, both });
      const chanceOfAny = Math.min(1, chance * compared);
      return {
        otherId: id,
        all,
        own,
        other: cases,
        both,
        shareOfOwn: own === 0 ? 0 : both / own,
        shareOfOther: cases === 0 ? 0 : both / cases,
        expected,
        lift: expected === 0 ? 0 : both / expected,
        chance,
        chanceOfAny,
        verdict: !enough(cases) ? 'tooFew' : chanceOfAny < TOGETHER_ALPHA ? 'oftener' : 'notShown',
      };
    })
    .sort((a, b) => b.both - a.both || b.lift - a.lift);
  return { compared, pairs };
}
