import type { Solver } from '../kits/solver';
import { components } from './components';
import { placeSets } from './place';
import { type Aims, aimsOf, compareAims, idealAims, type Plan } from './plan';
import { type TurnaroundProblem, waysOf } from './problem';
import { type Demand, turnaroundProgramme } from './programme';
import { firstPlans } from './rulesOfThumb';
import { held, leastOfFirst, type Stage, stagesOf } from './stages';
import { startValues } from './startValues';

export interface SolveTurnaroundOptions {
  /** Runs the integer programmes; without one the best rule of thumb is the answer, and mostly unproven. */
  solver: Solver | null;
  /** Shared out among the groups of cases that need the solver, by their size. */
  timeLimitMs: number;
  /** Called before each group of cases that needs the solver, and at the end. What it throws ends the work. */
  onProgress?: (progress: TurnaroundProgress) => void;
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
  { solver, timeLimitMs, onProgress }: SolveTurnaroundOptions,
): Promise<void> {
  const cases = problem.cases.length;
  const open: { group: number[]; known: Known }[] = [];
  for (const group of groups.filter((one) => !decided.has(nameOf(one)))) {
    const known = bestKnown(problem, group);
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
    const share = timeLimitMs * (size(group) / allSizes);
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

function overdrawnPouches(problem: TurnaroundProblem, plan: Plan): number[] {
  const taken = problem.pouches.map(() => 0);
  plan.forEach((service, one) => {
    for (const pouch of waysOf(problem, one)[service?.way ?? -1]?.pouches ?? [])
      taken[pouch] = (taken[pouch] ?? 0) + 1;
  });
  return taken.flatMap((count, pouch) => (count > (problem.pouches[pouch] ?? 0) ? [pouch] : []));
}

interface Known {
  plan: Plan;
  aims: Aims;
}

interface Solved extends Known {
  atLeast: Aims;
  proven: boolean;
}

interface SolverAndTime {
  solver: Solver;
  timeLimitMs: number;
}

function bestKnown(problem: TurnaroundProblem, group: readonly number[]): Known {
  return firstPlans(problem, group)
    .map((plan) => ({ plan, aims: aimsOf(problem, plan, group) }))
    .reduce((best, one) => (compareAims(one.aims, best.aims) < 0 ? one : best));
}

async function improve(
  problem: TurnaroundProblem,
  group: readonly number[],
  known: Known,
  options: SolverAndTime,
): Promise<Solved> {
  const solved = await solveGroup(problem, group, known, null, options);
  if (!solved) throw new Error('a plan that holds was called infeasible by the solver');
  return solved;
}

/**
 * The best plan for these cases in which the demand is met; `null` where there is none, or none was found in time. Nothing
 * else may stand in the way of the cases.
 */
export async function solveDemand(
  problem: TurnaroundProblem,
  cases: readonly number[],
  demand: Demand,
  options: SolverAndTime,
): Promise<Solved | null> {
  return await solveGroup(problem, cases, null, demand, options);
}

/** From here on, cliques leave too little to be found for the time that looking for it takes. */
const LEAN_COLUMNS = 300;

/** One stage after the other, each held at its best before the next. */
async function solveGroup(
  problem: TurnaroundProblem,
  group: readonly number[],
  known: Known | null,
  demand: Demand | null,
  { solver, timeLimitMs }: SolverAndTime,
): Promise<Solved | null> {
  const programme = turnaroundProgramme(problem, group, demand);
  if (demand && !programme.columns.some((column) => column.case === demand.case)) return null;
  const constraints = [...programme.base.constraints];
  const ideal = idealAims(problem, group);
  const stages = stagesOf(programme);
  const atLeast = [...ideal];
  let best = known;
  for (const [number, stage] of stages.entries()) {
    if (best === null || !isIdeal(stage, best.aims, ideal)) {
      const answer = await solver(
        {
          ...programme.base,
          constraints,
          objective: stage.objective,
          startFrom: best ? startValues(programme, best.plan) : null,
        },
        // what comes first decides most, and gets most of the time
        {
          presolve: programme.columns.length < LEAN_COLUMNS,
          timeLimitMs:
            timeLimitMs * (stages.length === 1 ? 1 : number === 0 ? 0.6 : 0.4 / (stages.length - 1)),
        },
      );
      if (answer.status === 'infeasible' || answer.status === 'nothingFound')
        return answer.status === 'nothingFound' && best ? { ...best, atLeast, proven: false } : null;
      const plan = placeSets(problem, programme, answer.values);
      const found = { plan, aims: aimsOf(problem, plan, group) };
      if (best === null || compareAims(found.aims, best.aims) < 0) best = found;
      if (answer.status === 'timeLimit') {
        const bound = answer.objective - Math.abs(answer.objective) * answer.gap + stage.constant;
        const least = Number.isFinite(bound) ? leastOfFirst(stage, bound) : 0;
        atLeast[stage.from] = Math.max(atLeast[stage.from] as number, least);
        return { ...best, atLeast, proven: false };
      }
    }
    const { aims } = best;
    for (let aim = stage.from; aim < stage.to; aim += 1) atLeast[aim] = aims[aim] as number;
    constraints.push(...held(stage, programme, aims));
  }
  // with nothing to choose from there is no stage, and the plan is empty
  best ??= demand ? null : { plan: problem.cases.map(() => null), aims: ideal };
  return best && { ...best, atLeast, proven: true };
}

function isIdeal({ from, to }: Stage, aims: Aims, ideal: Aims): boolean {
  for (let aim = from; aim < to; aim += 1) if (aims[aim] !== ideal[aim]) return false;
  return true;
}
