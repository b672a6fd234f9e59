import type { TurnaroundProblem } from '@/lib/turnaround/problem';

/** How a case is served, and by which sets. */
export type Tried = { way: number; sets: readonly number[] } | null;

/**
 * What is wrong with a plan, worked out without anything of the program: each set in time, no set in two places, pouches
 * enough. Empty where it holds.
 */
export function faultsOf(problem: TurnaroundProblem, plan: readonly Tried[]): string[] {
  const { cases, sets, pouches, rule } = problem;
  const faults: string[] = [];
  const uses: { set: number; from: number; to: number }[] = [];
  const taken = pouches.map(() => 0);
  plan.forEach((service, one) => {
    if (!service) return;
    const case_ = cases[one];
    const way = case_?.ways[service.way];
    if (!case_ || !way) {
      faults.push(`case ${one} has no way ${service.way}`);
      return;
    }
    if (way.parts.length !== service.sets.length) faults.push(`case ${one}: parts`);
    service.sets.forEach((set, part) => {
      const { readyMs, turnMs } = sets[set] as TurnaroundProblem['sets'][number];
      if (!way.parts[part]?.includes(set)) faults.push(`case ${one}: set ${set} is not of part ${part}`);
      if (readyMs === null || readyMs[rule.planBy] > case_.needMs)
        faults.push(`case ${one}: ${set} not ready`);
      uses.push({ set, from: case_.needMs, to: case_.endMs + turnMs[rule.planBy] });
    });
    for (const pouch of way.pouches) taken[pouch] = (taken[pouch] ?? 0) + 1;
  });
  uses.forEach((a, at) => {
    for (const b of uses.slice(at + 1))
      if (a.set === b.set && a.from < b.to && b.from < a.to) faults.push(`set ${a.set} in two places`);
  });
  taken.forEach((count, pouch) => {
    if (count > (pouches[pouch] ?? 0)) faults.push(`pouch ${pouch} given ${count} times`);
  });
  return faults;
}

/** The aims of a plan, written down a second time from their definition. */
export function costOf({ cases, sets, promises, rule }: TurnaroundProblem, plan: readonly Tried[]): number[] {
  const unserved = [0, 1, 2, 3].map(
    (rank) => cases.filter((one, at) => one.rank === rank && plan[at] == null).length,
  );
  const broken = promises.filter((promise) => !plan[promise.case]?.sets.includes(promise.set));
  const sum = (values: number[]) => values.reduce((a, b) => a + b, 0);
  const risk = sets.map(({ readyMs, turnMs }, set) => {
    const users = cases.filter((_, one) => plan[one]?.sets.includes(set)).sort((a, b) => a.needMs - b.needMs);
    return sum(
      users.map(({ needMs }, at) => {
        const before = users[at - 1];
        const sure = (before ? before.endMs + turnMs.p90 : (readyMs?.p90 ?? 0)) + rule.wantedMarginMs;
        return Math.max(0, Math.ceil((sure - needMs) / 60_000));
      }),
    );
  });
  return [
    broken.filter(({ fixed }) => fixed).length,
    ...unserved,
    sum(broken.map(({ moveCost }) => moveCost)),
    sum(risk),
    sum(cases.map((one, at) => one.ways[plan[at]?.way ?? -1]?.penalty ?? 0)),
  ];
}

/** Every plan there is, one after the other. */
export function* everyPlan(problem: TurnaroundProblem, from: Tried[] = []): Generator<Tried[]> {
  const one = problem.cases[from.length];
  if (!one) {
    yield from;
    return;
  }
  const choices: Tried[] = [
    null,
    ...one.ways.flatMap(({ parts }, way) => pick(parts).map((sets) => ({ way, sets }))),
  ];
  for (const choice of choices) {
    const plan = [...from, choice];
    if (faultsOf(problem, plan).length === 0) yield* everyPlan(problem, plan);
  }
}

/** One set for each part, none twice. */
function pick(parts: readonly (readonly number[])[]): number[][] {
  return parts.reduce<number[][]>(
    (chosen, part) =>
      chosen.flatMap((sets) => part.filter((set) => !sets.includes(set)).map((set) => [...sets, set])),
    [[]],
  );
}

/** The least cost of all plans that meet a condition; `null` where none does. */
export function leastCost(
  problem: TurnaroundProblem,
  meets: (plan: readonly Tried[]) => boolean = () => true,
): number[] | null {
  let least: number[] | null = null;
  for (const plan of everyPlan(problem)) {
    if (!meets(plan)) continue;
    const cost = costOf(problem, plan);
    if (least === null || isLess(cost, least)) least = cost;
  }
  return least;
}

export function isLess(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, place) => value !== b[place]);
  return at !== -1 && (a[at] as number) < (b[at] as number);
}
