import type { EarlyUse } from './earlyUses';
import type { Plan } from './plan';
import { firmReadyOf, type TurnaroundProblem } from './problem';
import type { Column, TurnaroundProgramme } from './programme';

/**
 * Gives what the programme chose to sets by name. In the order of need each takes the set that has been back longest; an
 * early use stays with the set it is of. Within a group there is always one: no more overlap than there are sets.
 */
export function placeSets(
  problem: TurnaroundProblem,
  { columns, early, groups }: TurnaroundProgramme,
  values: readonly number[],
): Plan {
  const isChosen = ({ variable }: { variable: number }) => Math.round(values[variable] ?? 0) === 1;
  const earlyBy = new Map<Column, EarlyUse>();
  for (const use of early) if (isChosen(use)) earlyBy.set(use.by, use);
  const plan: Plan = problem.cases.map(() => null);
  const given = new Map<Column, number>();
  const freeMs = groups.map(({ members }) => new Map(members.map((set) => [set, firmReadyOf(problem, set)])));
  const chosen = columns
    .filter(isChosen)
    .sort((a, b) => a.needMs - b.needMs || a.case - b.case || a.part - b.part);
  for (const column of chosen) {
    const free = freeMs[column.group] as Map<number, number>;
    const use = earlyBy.get(column);
    const set = use
      ? (use.set ?? (given.get(use.after as Column) as number))
      : longestFree(free, column.needMs);
    given.set(column, set);
    free.set(set, column.firmBackMs);
    const service = plan[column.case];
    const sets = [...(service?.sets ?? [])];
    sets[column.part] = set;
    plan[column.case] = { way: column.way, sets };
  }
  return plan;
}

function longestFree(freeMs: ReadonlyMap<number, number>, needMs: number): number {
  let best: number | null = null;
  let since = Number.POSITIVE_INFINITY;
  for (const [set, at] of freeMs) {
    if (at <= needMs && at < since) [best, since] = [set, at];
  }
  if (best === null) throw new Error('more sets of a group are in use than it has');
  return best;
}
