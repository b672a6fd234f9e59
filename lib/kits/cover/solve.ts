import type { IntegerProgramme, Solver } from '../solver';
import { greedySets } from './greedy';
import { type Completed, complete } from './packs';
import { type CoverProblem, compareCosts } from './problem';
import { type KitProgramme, kitProgramme } from './programme';
import { DEFAULT_LIMITS, type Reachable, reachable, type SearchLimits, search } from './search';
import { startValues } from './startValues';

export interface Solved {
  reach: Reachable;
  best: Completed;
  /** Kits with as few trays and packs; known only where the search looked at all choices. */
  ties: Completed[];
  proof:
    | { kind: 'optimal'; by: 'search' | 'programme' }
    | { kind: 'gap'; lowerBoundTrays: number; gap: number };
}

export interface SolveOptions {
  /** Runs the integer programme when the search gives up; without one the best found so far is the answer. */
  solver: Solver | null;
  timeLimitMs: number;
  limits?: SearchLimits;
}

/**
 * The best kit: fewest trays, then fewest packs, then the further aims (see `Cost`). The search of our own settles the
 * usual case at once and with proof; what it gives up goes to the integer programme, which starts from the best
 * answer known and is never worse than it.
 */
export async function solveCover(
  problem: CoverProblem,
  { solver, timeLimitMs, limits = DEFAULT_LIMITS }: SolveOptions,
): Promise<Solved> {
  const reach = reachable(problem);
  const searched = search(problem, reach, limits);
  if (searched.best && searched.complete) {
    return { reach, best: searched.best, ties: searched.ties, proof: { kind: 'optimal', by: 'search' } };
  }
  const start = better(searched.best, complete(problem, reach.chains, greedySets(problem, reach)));
  const unproven: Solved = {
    reach,
    best: start,
    ties: searched.ties,
    proof: gapOf(start, searched.fewestTrays),
  };
  return solver ? await byProgramme(problem, unproven, solver, timeLimitMs) : unproven;
}

/**
 * One aim after the other, each held at its optimum before the next. The sets so found are completed by the exact
 * pack step, which also settles what the programme leaves to chance.
 */
async function byProgramme(
  problem: CoverProblem,
  known: Solved,
  solver: Solver,
  timeLimitMs: number,
): Promise<Solved> {
  const { reach } = known;
  const programme = kitProgramme(problem, reach);
  const constraints = [...programme.base.constraints];
  let best = known.best;
  let proof = known.proof;
  for (const [stage, objective] of programme.aims.entries()) {
    if (objective.every((coefficient) => coefficient === 0)) continue;
    const asked: IntegerProgramme = {
      ...programme.base,
      constraints,
      objective,
      startFrom: startValues(problem, reach, programme, best),
    };
    // the aim that decides gets most of the time; the rest share what is left
    const answer = await solver(asked, { timeLimitMs: stage === 0 ? timeLimitMs * 0.6 : timeLimitMs * 0.2 });
    if (answer.status === 'infeasible')
      throw new Error('a kit that holds was called infeasible by the solver');
    if (answer.status === 'nothingFound') break;
    best = better(best, complete(problem, reach.chains, openedIn(answer.values, programme)));
    if (answer.status === 'timeLimit') {
      if (stage === 0) {
        const bound = Math.ceil(answer.objective * (1 - answer.gap) - 1e-6);
        proof = gapOf(best, Math.max(bound, known.proof.kind === 'gap' ? known.proof.lowerBoundTrays : 0));
      }
      break;
    }
    if (stage === 0) proof = { kind: 'optimal', by: 'programme' };
    const variables = objective.flatMap((coefficient, number) => (coefficient === 0 ? [] : [number]));
    constraints.push({
      variables,
      coefficients: variables.map((number) => objective[number] as number),
      lower: null,
      upper: Math.round(answer.objective),
    });
  }
  return { ...known, best, proof };
}

function openedIn(values: number[], programme: KitProgramme): number[] {
  return programme.sets.flatMap((variable, set) => (Math.round(values[variable] ?? 0) === 1 ? [set] : []));
}

function better(a: Completed | null, b: Completed): Completed {
  return a && compareCosts(a.cost, b.cost) <= 0 ? a : b;
}

function gapOf(best: Completed, lowerBoundTrays: number): Solved['proof'] {
  const trays = best.cost[0];
  if (lowerBoundTrays >= trays) return { kind: 'optimal', by: 'programme' };
  return { kind: 'gap', lowerBoundTrays, gap: (trays - lowerBoundTrays) / trays };
}
