import type { Solver } from '../kits/solver';
import { placeSets } from './place';
import { type Aims, aimsOf, compareAims, idealAims, type Plan } from './plan';
import type { TurnaroundProblem } from './problem';
import { type Demand, turnaroundProgramme } from './programme';
import { held, leastOfFirst, type Stage, stagesOf } from './stages';
import { startValues } from './startValues';

export interface Known {
  plan: Plan;
  aims: Aims;
}

export interface Solved extends Known {
  atLeast: Aims;
  proven: boolean;
}

interface SolverAndTime {
  solver: Solver;
  timeLimitMs: number;
}

/** The best plan for cases that nothing else can stand in the way of, never worse than the one known. */
export async function improve(
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
