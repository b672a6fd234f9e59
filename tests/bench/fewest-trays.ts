import { highsSolver } from '@/app/_server/solver/highs';
import type { CoverProblem } from '@/lib/kits/cover/problem';
import { solveCover } from '@/lib/kits/cover/solve';
import { type BenchRow, percentiles } from './row';

const SETS = 200;
const LINES = 60;
const TIME_LIMIT_MS = 3_000;

/** Numbers as if by chance, the same in every run (mulberry32). */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const cost = (next: () => number) => ({
  promises: next() < 0.1 ? 1 : 0,
  useByDays: Math.floor(next() * 300),
  massGrams: 4_000 + Math.floor(next() * 6_000),
  metres: Math.floor(next() * 40),
});

const line = (item: number) => ({ slots: [{ candidates: [item], pieces: 1 }], links: [] });

/** A hospital: 25 configurations of eight copies each, each copy short of something now and then. */
function hospital(seed: number): CoverProblem {
  const next = chance(seed);
  const configurations = Array.from({ length: 25 }, () =>
    Array.from({ length: LINES }, (_, item) => item).filter(() => next() < 0.18),
  );
  const sets = Array.from({ length: SETS }, (_, number) => ({
    holds: new Map((configurations[number % 25] ?? []).filter(() => next() > 0.04).map((item) => [item, 1])),
    cost: cost(next),
  }));
  return {
    itemCount: LINES,
    sets,
    packs: [],
    chains: Array.from({ length: LINES }, (_, item) => line(item)),
    pieces: [],
  };
}

/** No order at all: every set holds what chance gives it. */
function scattered(seed: number, density: number): CoverProblem {
  const next = chance(seed);
  const sets = Array.from({ length: SETS }, () => ({
    holds: new Map(
      Array.from({ length: LINES }, (_, item) => item)
        .filter(() => next() < density)
        .map((item) => [item, 1]),
    ),
    cost: cost(next),
  }));
  return {
    itemCount: LINES,
    sets,
    packs: [],
    chains: Array.from({ length: LINES }, (_, item) => line(item)),
    pieces: [],
  };
}

/** Lines as they come from plans: chains of three links whose pairs must fit, and screws that are used up. */
function plans(seed: number): CoverProblem {
  const next = chance(seed);
  const itemCount = 150;
  const pick = (most: number) => Math.floor(next() * most);
  const configurations = Array.from({ length: 25 }, () => {
    const items = Array.from({ length: itemCount }, (_, item) => item).filter(() => next() < 0.22);
    return new Map(items.map((item) => [item, item < 120 ? 1 : 1 + pick(3)]));
  });
  const sets = Array.from({ length: SETS }, (_, number) => ({
    holds: new Map([...(configurations[number % 25] ?? [])].filter(() => next() > 0.04)),
    cost: cost(next),
  }));
  const chains = Array.from({ length: 40 }, () => {
    const slots = Array.from({ length: 3 }, () => ({
      candidates: [pick(120), pick(120), pick(120)],
      pieces: 1,
    }));
    const pairs = (): [number, number][] =>
      [0, 1, 2].flatMap((a) => [0, 1, 2].flatMap((b): [number, number][] => (next() < 0.6 ? [[a, b]] : [])));
    return {
      slots,
      links: [
        { first: 0, second: 1, pairs: pairs() },
        { first: 1, second: 2, pairs: pairs() },
      ],
    };
  });
  const pieces = Array.from({ length: 20 }, () => ({
    accepts: [120 + pick(30), 120 + pick(30)].map((item, at) => ({ item, longerMm: at * 2 })),
  }));
  return { itemCount, sets, packs: [], chains, pieces };
}

/** The same cover as anyone would first write it down: one variable a set, one row a line, no start. */
async function plainModel(problem: CoverProblem): Promise<{ trays: number; proven: boolean }> {
  const rows = problem.chains.map(({ slots }) => {
    const item = slots[0]?.candidates[0] ?? -1;
    return problem.sets.flatMap(({ holds }, number) => (holds.has(item) ? [number] : []));
  });
  const answer = await highsSolver(
    {
      objective: problem.sets.map(() => 1),
      lower: problem.sets.map(() => 0),
      upper: problem.sets.map(() => 1),
      integer: problem.sets.map(() => true),
      constraints: rows
        .filter((variables) => variables.length > 0)
        .map((variables) => ({ variables, coefficients: variables.map(() => 1), lower: 1, upper: null })),
      startFrom: null,
    },
    { timeLimitMs: TIME_LIMIT_MS },
  );
  if (!('objective' in answer)) throw new Error(`the plain model ended with ${answer.status}`);
  return { trays: Math.round(answer.objective), proven: answer.status === 'optimal' };
}

/** Fewest trays on 200 sets × 60 lines; our own bound: proven within 1 s, never worse than a plain model beside it. */
export async function bench(): Promise<BenchRow[]> {
  const groups: { name: string; problems: CoverProblem[]; plain: boolean }[] = [
    { name: '25 configurations, 8 copies each', problems: seeds(12).map(hospital), plain: true },
    { name: 'scattered, 12 % filled', problems: seeds(6).map((seed) => scattered(seed, 0.12)), plain: true },
    { name: 'scattered, 25 % filled', problems: seeds(6).map((seed) => scattered(seed, 0.25)), plain: true },
    { name: '40 chains of three and 20 screws', problems: seeds(6).map(plans), plain: false },
  ];
  const warm = hospital(99);
  await solveCover(warm, { solver: highsSolver, timeLimitMs: TIME_LIMIT_MS });
  await plainModel(warm);
  const rows: BenchRow[] = [];
  for (const { name, problems, plain } of groups) {
    const ours: number[] = [];
    const theirs: number[] = [];
    let unproven = 0;
    let plainUnproven = 0;
    for (const problem of problems) {
      const before = performance.now();
      const solved = await solveCover(problem, { solver: highsSolver, timeLimitMs: TIME_LIMIT_MS });
      ours.push(performance.now() - before);
      if (solved.proof.kind !== 'optimal') unproven += 1;
      if (!plain) continue;
      const start = performance.now();
      const { trays, proven } = await plainModel(problem);
      theirs.push(performance.now() - start);
      if (!proven) plainUnproven += 1;
      if (solved.best.cost[0] > trays)
        throw new Error(`${name}: ${solved.best.cost[0]} trays where the plain model has ${trays}`);
    }
    const beside =
      plainUnproven > 0 ? `; plain model ${plainUnproven} not proven in ${TIME_LIMIT_MS / 1000} s` : '';
    const note = `${unproven > 0 ? `, ${unproven} of ${problems.length} not proven` : `, all ${problems.length} proven`}${beside}`;
    rows.push({
      name: `fewest-trays: ${name}${note}`,
      ...percentiles(ours),
      bound: 1_000,
      ratio: plain ? sum(ours) / sum(theirs) : null,
      ...(plain ? { beside: 'a plain model given to the same solver' } : {}),
    });
  }
  return rows;
}

const seeds = (count: number) => Array.from({ length: count }, (_, at) => at + 1);
const sum = (times: number[]) => times.reduce((a, b) => a + b, 0);
