import { inTime, type PlannedSet, type TurnaroundProblem, waysOf } from './problem';

/** Sets that these cases cannot tell apart but for when each is first ready. */
export interface SetGroup {
  members: number[];
}

/**
 * Brings interchangeable sets together: the same parts list them, their turns take as long, and no promise or question
 * names one of them. What is then given out is how many are in use, not which (interval colouring finds that).
 *
 * @param apart sets that are asked about by name
 */
export function setGroups(
  problem: TurnaroundProblem,
  cases: readonly number[],
  apart: ReadonlySet<number> = new Set(),
): SetGroup[] {
  const listed = new Map<number, string[]>();
  const useful = new Set<number>();
  for (const one of cases) {
    waysOf(problem, one).forEach(({ parts }, way) => {
      const ready = parts.map((part) => inTime(problem, one, part));
      if (ready.some((part) => part.length === 0)) return;
      parts.forEach((part, at) => {
        const name = `${one}/${way}/${at}`;
        for (const set of part) {
          const names = listed.get(set);
          if (names) names.push(name);
          else listed.set(set, [name]);
        }
      });
      for (const set of ready.flat()) useful.add(set);
    });
  }
  const here = new Set(cases);
  const promised = new Set(
    problem.promises.flatMap((promise) => (here.has(promise.case) ? [promise.set] : [])),
  );
  const groups = new Map<string, SetGroup>();
  for (const set of [...useful].sort((a, b) => a - b)) {
    const { turnMs } = problem.sets[set] as PlannedSet;
    const alone = promised.has(set) || apart.has(set) ? set : '';
    const key = `${alone}|${turnMs.p50}|${turnMs.p90}|${listed.get(set)?.join()}`;
    const group = groups.get(key);
    if (group) group.members.push(set);
    else groups.set(key, { members: [set] });
  }
  return [...groups.values()];
}
