import { firmBackOf, firmReadyOf, inTime, needOf, type TurnaroundProblem, waysOf } from './problem';

/**
 * Cases that may stand in each other's way, together; what is decided in one of these groups changes nothing in another.
 * Two cases are linked where some set could serve both and they overlap on it, or where both could take one of these
 * pouches. Cases that nothing could serve in time are in none. Each group, and the groups, in the order of need.
 *
 * @param scarce pouches that have been found too few for all
 */
export function components(problem: TurnaroundProblem, scarce: ReadonlySet<number>): number[][] {
  const parent = problem.cases.map((_, one) => one);
  const root = (one: number): number => {
    let at = one;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at] as number] as number;
      at = parent[at] as number;
    }
    return at;
  };
  const link = (a: number, b: number) => {
    parent[root(a)] = root(b);
  };
  const couldUse = new Map<number, Set<number>>();
  const couldTake = new Map<number, Set<number>>();
  const servable = new Set<number>();
  problem.cases.forEach((_, one) => {
    for (const way of waysOf(problem, one)) {
      const parts = way.parts.map((part) => inTime(problem, one, part));
      if (parts.some((part) => part.length === 0)) continue;
      servable.add(one);
      for (const set of parts.flat()) couldUse.set(set, (couldUse.get(set) ?? new Set()).add(one));
      for (const pouch of way.pouches) couldTake.set(pouch, (couldTake.get(pouch) ?? new Set()).add(one));
    }
  });
  for (const [set, cases] of couldUse) linkOverlapping(problem, set, [...cases], link);
  for (const pouch of scarce) {
    const [first, ...others] = [...(couldTake.get(pouch) ?? [])];
    for (const other of others) link(first as number, other);
  }
  const groups = new Map<number, number[]>();
  for (const one of inOrder(problem, servable))
    groups.set(root(one), [...(groups.get(root(one)) ?? []), one]);
  return [...groups.values()];
}

function linkOverlapping(
  problem: TurnaroundProblem,
  set: number,
  cases: number[],
  link: (a: number, b: number) => void,
): void {
  let last: number | null = null;
  // who takes a set before it is surely ready decides what risk is left to those after
  let until = firmReadyOf(problem, set);
  for (const one of inOrder(problem, cases)) {
    if (last !== null && needOf(problem, one) < until) link(last, one);
    last = one;
    until = Math.max(until, firmBackOf(problem, one, set));
  }
}

export function inOrder(problem: TurnaroundProblem, cases: Iterable<number>): number[] {
  return [...cases].sort((a, b) => needOf(problem, a) - needOf(problem, b) || a - b);
}
