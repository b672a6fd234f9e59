import type { Solver } from '../kits/solver';
import { components } from './components';
import { type Aims, aimsOf, compareAims, idealAims, type Plan } from './plan';
import { type TurnaroundProblem, waysOf } from './problem';
import { FIRST_RULES } from './rulesOfThumb';
import { improve, type Known, type Solved } from './solveGroup';

export interface SolveTurnaroundOptions {
  /** Runs the integer programmes; without one the best rule of thumb is the answer, and mostly unproven. */
  solver: Solver | null;
  /** Shared out among the groups of cases that need the solver, by their size. */
  timeLimitMs: number;
  /** Called before each group of cases that needs the solver, and at the end. */
  onProgress?: (progress: TurnaroundProgress) => void;
  /** Ends the work before the next question to the solver; the promise then rejects with its reason. */
  signal?: AbortSignal | undefined;
  /** Lets others have their turn: awaited before each group of cases is looked at, each rule of thumb, and each programme. */
  pause?: (() => Promise<void>) | undefined;
}

export interface TurnaroundProgress {
  casesDone: number;
  cases: number;
}

export interface SolvedTurnaround {
  plan: Plan;
  aims: Aims;
  /** Proven: no plan is better in an aim without being worse in one before it. Else what the aims are at the least. */
  proof: { kind: 'optimal' } | { kind: 'gap'; atLeast: Aims };
}

/**
 * The best plan, aim after aim in the order of `AIM`. Cases that cannot stand in each other's way are decided apart. Where
 * a rule of thumb already reaches what would be if nobody stood in anybody's way, that is the proof; all else goes
 * to the solver, which begins from the best rule of thumb and is never worse than it.
 *
 * Pouches are first left out of account between groups: mostly there are enough, and a plan that holds all the same is
 * the best with them too. Those that are given out too often join the groups that want them, and these are decided again.
 */
export async function solveTurnaround(
  problem: TurnaroundProblem,
  options: SolveTurnaroundOptions,
): Promise<SolvedTurnaround> {
  const scarce = new Set<number>();
  const decided = new Map<string, Solved>();
  for (let timeLimitMs = options.timeLimitMs / 2; ; timeLimitMs /= 2) {
    const groups = components(problem, scarce);
    await options.pause?.();
    await decide(problem, groups, decided, { ...options, timeLimitMs });
    const solved = together(problem, groups, decided);
    const overdrawn = overdrawnPouches(problem, solved.plan);
    if (overdrawn.length === 0) return solved;
    for (const pouch of overdrawn) scarce.add(pouch);
  }
}

/** Solves what is not decided yet, and writes it down under the group's name. */
async function decide(
  problem: TurnaroundProblem,
  groups: readonly number[][],
  decided: Map<string, Solved>,
  { solver, timeLimitMs, onProgress, signal, pause }: SolveTurnaroundOptions,
): Promise<void> {
  const cases = problem.cases.length;
  const open: { group: number[]; known: Known }[] = [];
  for (const group of groups.filter((one) => !decided.has(nameOf(one)))) {
    await pause?.();
    signal?.throwIfAborted();
    const known = await bestKnown(problem, group, pause);
    const ideal = idealAims(problem, group);
    if (compareAims(known.aims, ideal) === 0)
      decided.set(nameOf(group), { ...known, atLeast: ideal, proven: true });
    else if (!solver) decided.set(nameOf(group), { ...known, atLeast: ideal, proven: false });
    else open.push({ group, known });
  }
  const size = (group: readonly number[]) => group.length ** 2;
  const allSizes = open.reduce((sum, { group }) => sum + size(group), 0);
  let casesDone = cases - open.reduce((sum, { group }) => sum + group.length, 0);
  for (const { group, known } of open) {
    onProgress?.({ casesDone, cases });
    signal?.throwIfAborted();
    const share = timeLimitMs * (size(group) / allSizes);
    await pause?.();
    decided.set(
      nameOf(group),
      await improve(problem, group, known, { solver: solver as Solver, timeLimitMs: share }),
    );
    casesDone += group.length;
  }
  onProgress?.({ casesDone, cases });
}

const nameOf = (group: readonly number[]) => group.join();

/** The groups' plans as one; their aims and bounds add up. */
function together(
  problem: TurnaroundProblem,
  groups: readonly number[][],
  decided: ReadonlyMap<string, Solved>,
): SolvedTurnaround {
  const everyCase = problem.cases.map((_, one) => one);
  const plan: Plan = everyCase.map(() => null);
  const grouped = new Set(groups.flat());
  const atLeast = [
    ...idealAims(
      problem,
      everyCase.filter((one) => !grouped.has(one)),
    ),
  ];
  let proven = true;
  for (const group of groups) {
    const solved = decided.get(nameOf(group)) as Solved;
    for (const one of group) plan[one] = solved.plan[one] ?? null;
    proven &&= solved.proven;
    solved.atLeast.forEach((bound, aim) => {
      atLeast[aim] = (atLeast[aim] as number) + bound;
    });
  }
  const aims = aimsOf(problem, plan, everyCase);
  return { plan, aims, proof: proven ? { kind: 'optimal' } : { kind: 'gap', atLeast } };
}

/** Pouches that a plan gives out more often than they are there. */
export function overdrawnPouches(problem: TurnaroundProblem, plan: Plan): number[] {
  const taken = problem.pouches.map(() => 0);
  plan.forEach((service, one) => {
    for (const pouch of waysOf(problem, one)[service?.way ?? -1]?.pouches ?? [])
      taken[pouch] = (taken[pouch] ?? 0) + 1;
  });
  return taken.flatMap((count, pouch) => (count > (problem.pouches[pouch] ?? 0) ? [pouch] : []));
}

async function bestKnown(
  problem: TurnaroundProblem,
  group: readonly number[],
  pause: SolveTurnaroundOptions['pause'],
): Promise<Known> {
  let best: Known | null = null;
  for (const rule of FIRST_RULES) {
    await pause?.();
    const plan = rule(problem, group);
    const one = { plan, aims: aimsOf(problem, plan, group) };
    if (best === null || compareAims(one.aims, best.aims) < 0) best = one;
  }
  if (best === null) throw new Error('there is a rule of thumb');
  return best;
}
