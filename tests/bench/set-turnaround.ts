import { highsSolver } from '@/app/_server/solver/highs';
import type { Constraint } from '@/lib/kits/solver';
import { AIM, aimsOf, compareAims, RANKS } from '@/lib/turnaround/plan';
import { backOf, inTime, needOf, type TurnaroundProblem, waysOf } from '@/lib/turnaround/problem';
import { earliestFree } from '@/lib/turnaround/rulesOfThumb';
import { type SolvedTurnaround, solveTurnaround } from '@/lib/turnaround/solve';
import { theatreList } from '../fixtures/theatreLists';
import { type BenchRow, percentiles } from './row';

const TIME_LIMIT_MS = 60_000;

const DAY = { days: 1, cases: 40, kinds: 8, copies: 5, theatres: 6 };
const WEEK = { days: 5, cases: 400, kinds: 15, copies: 8, theatres: 10 };

/**
 * Sets to cases, a day of 40 cases × 40 sets and a week of 400 × 120; our own bounds: 300 ms and 5 s, all proven. In
 * the same run a plain model in the same solver (a variable per case and set, a row per pair that clashes) for the first
 * aims alone, and taking what has been free longest. Fails where either serves a case more.
 */
export async function bench(): Promise<BenchRow[]> {
  await solveTurnaround(theatreList(99, DAY), { solver: highsSolver, timeLimitMs: TIME_LIMIT_MS });
  return [
    await measure(
      'a day of 40 cases × 40 sets',
      seeds(20).map((seed) => theatreList(seed, DAY)),
      300,
      true,
    ),
    await measure('the same day re-planned', await replanned(seeds(20), DAY), 300, false),
    await measure(
      'a week of 400 × 120',
      seeds(10).map((seed) => theatreList(seed, WEEK)),
      5_000,
      true,
    ),
    await measure('the same week re-planned', await replanned(seeds(10), WEEK), 5_000, false),
  ];
}

async function measure(
  name: string,
  problems: readonly TurnaroundProblem[],
  bound: number,
  beside: boolean,
): Promise<BenchRow> {
  const ours: number[] = [];
  const theirs: number[] = [];
  let unproven = 0;
  let plainUnproven = 0;
  let more = 0;
  for (const problem of problems) {
    const before = performance.now();
    const solved = await solveTurnaround(problem, { solver: highsSolver, timeLimitMs: TIME_LIMIT_MS });
    ours.push(performance.now() - before);
    if (solved.proof.kind !== 'optimal') unproven += 1;
    more += servedMore(problem, solved);
    if (!beside) continue;
    const start = performance.now();
    const plain = await plainModel(problem);
    theirs.push(performance.now() - start);
    if (plain === null) plainUnproven += 1;
    else if (firstAims(solved.aims).join() !== plain.join())
      throw new Error(`${name}: ${firstAims(solved.aims)} unserved where the plain model has ${plain}`);
  }
  const notes = [
    unproven > 0 ? `${unproven} of ${problems.length} not proven` : `all ${problems.length} proven`,
    `${(more / problems.length).toFixed(1)} cases more than earliest free`,
    ...(plainUnproven > 0 ? [`plain model ${plainUnproven} not proven`] : []),
  ];
  return {
    name: `set-turnaround: ${name}, ${notes.join('; ')}`,
    ...percentiles(ours),
    bound,
    ratio: beside ? sum(ours) / sum(theirs) : null,
    ...(beside ? { beside: 'a plain model given to the same solver' } : {}),
  };
}

function servedMore(problem: TurnaroundProblem, { plan, aims }: SolvedTurnaround): number {
  const all = problem.cases.map((_, one) => one);
  const thumb = earliestFree(problem, all);
  if (compareAims(firstAims(aims), firstAims(aimsOf(problem, thumb, all))) > 0)
    throw new Error('earliest free serves what the plan does not');
  const served = (of: readonly unknown[]) => of.filter((one) => one !== null).length;
  return served(plan) - served(thumb);
}

const firstAims = (aims: readonly number[]) => aims.slice(AIM.unserved, AIM.unserved + RANKS);

/** A plan stands; then four sets in ten come back late, and three emergencies are added. */
async function replanned(wanted: number[], size: typeof DAY): Promise<TurnaroundProblem[]> {
  const problems: TurnaroundProblem[] = [];
  for (const seed of wanted) {
    const list = theatreList(seed, size);
    const { plan } = await solveTurnaround(list, { solver: highsSolver, timeLimitMs: TIME_LIMIT_MS });
    problems.push(theatreList(seed, size, plan));
  }
  return problems;
}

/** The same list as anyone would first write it down. Cases unserved by urgency; `null` where it was not proven. */
async function plainModel(problem: TurnaroundProblem): Promise<number[] | null> {
  const constraints: Constraint[] = [];
  const objective: number[] = [];
  const row = (terms: [number, number][], lower: number | null, upper: number | null) =>
    constraints.push({
      variables: terms.map(([at]) => at),
      coefficients: terms.map(([, by]) => by),
      lower,
      upper,
    });
  const counts = [0, 1, 2, 3].map((rank) => problem.cases.filter((one) => one.rank === rank).length);
  const weight = [3, 2, 1, 0].reduce<number[]>((weights, rank) => {
    weights[rank] = rank === 3 ? 1 : (weights[rank + 1] as number) * ((counts[rank + 1] as number) + 1);
    return weights;
  }, []);
  const uses = new Map<number, { variable: number; case: number; from: number; to: number }[]>();
  const taking = problem.pouches.map((): [number, number][] => []);
  const whole: { variable: number; rank: number }[] = [];
  problem.cases.forEach(({ rank }, one) => {
    const served: [number, number][] = [];
    for (const way of waysOf(problem, one)) {
      const served_ = objective.push(-(weight[rank] as number)) - 1;
      whole.push({ variable: served_, rank });
      served.push([served_, 1]);
      for (const pouch of way.pouches) taking[pouch]?.push([served_, 1]);
      for (const part of way.parts) {
        const terms = inTime(problem, one, part).map((set): [number, number] => {
          const variable = objective.push(0) - 1;
          const use = { variable, case: one, from: needOf(problem, one), to: backOf(problem, one, set) };
          uses.set(set, [...(uses.get(set) ?? []), use]);
          return [variable, 1];
        });
        row([...terms, [served_, -1]], 0, 0);
      }
    }
    row(served, null, 1);
  });
  taking.forEach((terms, pouch) => {
    if (terms.length > 0) row(terms, null, problem.pouches[pouch] ?? 0);
  });
  for (const list of uses.values()) {
    list.forEach((a, at) => {
      for (const b of list.slice(at + 1))
        if (a.from < b.to && b.from < a.to)
          row(
            [
              [a.variable, 1],
              [b.variable, 1],
            ],
            null,
            1,
          );
    });
  }
  const answer = await highsSolver(
    {
      objective,
      lower: objective.map(() => 0),
      upper: objective.map(() => 1),
      integer: objective.map(() => true),
      constraints,
      startFrom: null,
    },
    { timeLimitMs: TIME_LIMIT_MS },
  );
  if (answer.status !== 'optimal') return null;
  const served = (rank: number) =>
    whole.filter((one) => one.rank === rank && answer.values[one.variable] === 1).length;
  return counts.map((count, rank) => count - served(rank));
}

const seeds = (count: number) => Array.from({ length: count }, (_, at) => at + 1);
const sum = (times: number[]) => times.reduce((a, b) => a + b, 0);
