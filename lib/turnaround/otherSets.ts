import type { Solver } from '../kits/solver';
import { components } from './components';
import type { Plan, Service } from './plan';
import { type TurnaroundProblem, waysOf } from './problem';
import type { Demand } from './programme';
import { overdrawnPouches } from './solve';
import { solveDemand } from './solveGroup';

export interface RepairOptions {
  solver: Solver;
  timeLimitMs: number;
}

/** Per way, and for the present way without each of its sets: the best plan in which the case is served so. */
export async function otherSets(
  problem: TurnaroundProblem,
  plan: Plan,
  one: number,
  options: RepairOptions,
): Promise<{ service: Service; plan: Plan }[]> {
  const present = plan[one] ?? null;
  const demands = waysOf(problem, one).flatMap((_, way): Demand[] =>
    present?.way === way
      ? present.sets.map((without) => ({ case: one, way, without }))
      : [{ case: one, way, without: null }],
  );
  const timeLimitMs = options.timeLimitMs / Math.max(1, demands.length);
  const found: { service: Service; plan: Plan }[] = [];
  for (const demand of demands) {
    const other = await planWith(problem, plan, demand, { ...options, timeLimitMs });
    const service = other?.[one];
    if (other && service) found.push({ service, plan: other });
  }
  return found;
}

/** The best plan in which the demand is met; as in `solveTurnaround`, pouches link groups only where they run out. */
async function planWith(
  problem: TurnaroundProblem,
  plan: Plan,
  demand: Demand,
  options: RepairOptions,
): Promise<Plan | null> {
  const scarce = new Set<number>();
  for (let timeLimitMs = options.timeLimitMs / 2; ; timeLimitMs /= 2) {
    const group = components(problem, scarce).find((cases) => cases.includes(demand.case));
    const solved = group && (await solveDemand(problem, group, demand, { ...options, timeLimitMs }));
    if (!group || !solved) return null;
    const other = [...plan];
    for (const member of group) other[member] = solved.plan[member] ?? null;
    const overdrawn = overdrawnPouches(problem, other);
    if (overdrawn.length === 0) return other;
    for (const pouch of overdrawn) scarce.add(pouch);
  }
}
