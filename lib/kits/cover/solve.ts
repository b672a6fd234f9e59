import type { Solver } from '../solver';
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
  proof: /** Fewest trays and packs, proven; `furtherAims` says whether that is so of every aim. */
    | { kind: 'optimal'; by: 'search' | 'programme'; furtherAims: 'proven' | 'bestFound' }
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
  const { best: found, fewestTrays } = searched;
  // without a pack there can't be fewer; with some, only the search of all choices says so
  if (found && (searched.complete || found.cost[1] === 0)) {
    const furtherAims = searched.complete ? 'proven' : 'bestFound';
    return { reach, best: found, ties: searched.ties, proof: { kind: 'optimal', by: 'search', furtherAims } };
  }
  const best = better(found, complete(problem, reach.chains, greedySets(problem, reach)));
  const unproven: Solved = { reach, best, ties: searched.ties, proof: gapOf(best, fewestTrays) };
  return solver ? await byProgramme(problem, unproven, fewestTrays, solver, timeLimitMs) : unproven;
}

const TRAYS = 0;
const PACKS = 1;

/**
 * One aim after the other, each held at its optimum before the next. The sets so found are completed by the exact
 * pack step, which also settles what the programme leaves to chance. Aims proven by the search are held from the start.
 */
async function byProgramme(
  problem: CoverProblem,
  known: Solved,
  fewestTrays: number,
  solver: Solver,
  timeLimitMs: number,
): Promise<Solved> {
  const { reach } = known;
  const programme = kitProgramme(problem, reach);
  const constraints = [...programme.base.constraints];
  let { best, proof } = known;
  let lowerBoundTrays = fewestTrays;
  let proven = -1;
  const hold = (objective: number[], value: number) => {
    const variables = objective.flatMap((coefficient, number) => (coefficient === 0 ? [] : [number]));
    const coefficients = variables.map((number) => objective[number] as number);
    constraints.push({ variables, coefficients, lower: null, upper: value });
  };
  for (const [stage, objective] of programme.aims.entries()) {
    const settled = stage === TRAYS && best.cost[0] <= lowerBoundTrays;
    if (!settled && objective.some((coefficient) => coefficient !== 0)) {
      const answer = await solver(
        {
          ...programme.base,
          constraints,
          objective,
          startFrom: startValues(problem, reach, programme, best),
        },
        // the aim that decides gets most of the time
        { timeLimitMs: timeLimitMs * (stage === TRAYS ? 0.6 : 0.08) },
      );
      if (answer.status === 'infeasible')
        throw new Error('a kit that holds was called infeasible by the solver');
      if (answer.status === 'nothingFound') break;
      best = better(best, complete(problem, reach.chains, openedIn(answer.values, programme)));
      if (answer.status === 'timeLimit') {
        if (stage === TRAYS)
          lowerBoundTrays = Math.max(lowerBoundTrays, Math.ceil(answer.objective * (1 - answer.gap) - 1e-6));
        break;
      }
    }
    proven = stage;
    hold(objective, Math.round(objectiveOf(best, stage)));
  }
  if (proven >= TRAYS) lowerBoundTrays = best.cost[0];
  const furtherAims = proven === programme.aims.length - 1 ? 'proven' : 'bestFound';
  proof = proven >= PACKS ? { kind: 'optimal', by: 'programme', furtherAims } : gapOf(best, lowerBoundTrays);
  return { ...known, best, proof };
}

function objectiveOf(best: Completed, stage: number): number {
  return best.cost[stage] as number;
}

function openedIn(values: number[], programme: KitProgramme): number[] {
  return programme.sets.flatMap((variable, set) => (Math.round(values[variable] ?? 0) === 1 ? [set] : []));
}

function better(a: Completed | null, b: Completed): Completed {
  return a && compareCosts(a.cost, b.cost) <= 0 ? a : b;
}

/** With the trays proven and the packs not, the gap is 0 and the proof still none. */
function gapOf(best: Completed, lowerBoundTrays: number): Solved['proof'] {
  const trays = best.cost[0];
  const bound = Math.min(trays, lowerBoundTrays);
  return { kind: 'gap', lowerBoundTrays: bound, gap: trays === 0 ? 0 : (trays - bound) / trays };
}
