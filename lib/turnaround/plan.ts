import {
  firmBackOf,
  firmReadyOf,
  inTime,
  needOf,
  readyOf,
  type TurnaroundProblem,
  type Way,
  waysOf,
} from './problem';

/** How one case is served: which of its ways, and for each part of that way which set. */
export interface Service {
  way: number;
  sets: readonly number[];
}

/** Per case how it is served; `null`: by nothing. */
export type Plan = (Service | null)[];

/** Urgencies that are told apart. */
export const RANKS = 4;

/** What a plan is judged by, each to be as small as can be, the first that differs decides. */
export type Aims = readonly number[];

/** Where each aim stands in `Aims`: fixed promises not kept, then cases not served by urgency, and so on. */
export const AIM = {
  fixedBroken: 0,
  unserved: 1,
  movedCost: 1 + RANKS,
  riskMinutes: 2 + RANKS,
  penalty: 3 + RANKS,
} as const;
const AIMS = 4 + RANKS;

export const MINUTE_MS = 60_000;

/** The wanted margin that is lacking, in minutes begun. */
export const riskMinutes = (firmMs: number, needMs: number): number =>
  Math.max(0, Math.ceil((firmMs - needMs) / MINUTE_MS));

/** Judges the plan for these cases alone. What other cases have is not looked at, so it must not meet them. */
export function aimsOf(problem: TurnaroundProblem, plan: Plan, among: readonly number[]): Aims {
  const aims = new Array<number>(AIMS).fill(0);
  const add = (aim: number, amount: number) => {
    aims[aim] = (aims[aim] as number) + amount;
  };
  const wanted = new Set(among);
  for (const one of among) {
    const service = plan[one];
    if (!service) add(AIM.unserved + (problem.cases[one]?.rank ?? 0), 1);
    else add(AIM.penalty, (waysOf(problem, one)[service.way] as Way).penalty);
  }
  for (const promise of problem.promises) {
    if (!wanted.has(promise.case) || keeps(plan, promise)) continue;
    if (promise.fixed) add(AIM.fixedBroken, 1);
    add(AIM.movedCost, promise.moveCost);
  }
  for (const [set, uses] of usesBySet(problem, plan, among)) {
    uses.forEach((one, at) => {
      const before = uses[at - 1];
      const firm = before === undefined ? firmReadyOf(problem, set) : firmBackOf(problem, before, set);
      add(AIM.riskMinutes, riskMinutes(firm, needOf(problem, one)));
    });
  }
  return aims;
}

export function keeps(plan: Plan, promise: { case: number; set: number }): boolean {
  return plan[promise.case]?.sets.includes(promise.set) ?? false;
}

/** Negative where `a` is the better one. */
export function compareAims(a: Aims, b: Aims): number {
  for (let aim = 0; aim < a.length; aim += 1) {
    const difference = (a[aim] as number) - (b[aim] as number);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Per set the cases it serves, in the order of their need. */
export function usesBySet(
  problem: TurnaroundProblem,
  plan: Plan,
  among: readonly number[] = problem.cases.map((_, one) => one),
): Map<number, number[]> {
  const uses = new Map<number, number[]>();
  for (const one of among) {
    for (const set of plan[one]?.sets ?? []) uses.set(set, [...(uses.get(set) ?? []), one]);
  }
  for (const list of uses.values()) list.sort((a, b) => needOf(problem, a) - needOf(problem, b) || a - b);
  return uses;
}

/** The least each aim could be for these cases if nobody stood in anybody's way. */
export function idealAims(problem: TurnaroundProblem, among: readonly number[]): Aims {
  const aims = new Array<number>(AIMS).fill(0);
  const wanted = new Set(among);
  for (const one of among) {
    const possible = waysOf(problem, one).filter(({ parts }) =>
      parts.every((part) => inTime(problem, one, part).length > 0),
    );
    const aim = possible.length === 0 ? AIM.unserved + (problem.cases[one]?.rank ?? 0) : AIM.penalty;
    const least = possible.length === 0 ? 1 : Math.min(...possible.map(({ penalty }) => penalty));
    aims[aim] = (aims[aim] as number) + least;
  }
  for (const promise of problem.promises) {
    if (!wanted.has(promise.case) || canKeep(problem, promise)) continue;
    if (promise.fixed) aims[AIM.fixedBroken] = (aims[AIM.fixedBroken] as number) + 1;
    aims[AIM.movedCost] = (aims[AIM.movedCost] as number) + promise.moveCost;
  }
  return aims;
}

/** Whether the promised set is ready in time and of some use to the case. */
export function canKeep(problem: TurnaroundProblem, promise: { case: number; set: number }): boolean {
  return (
    readyOf(problem, promise.set) <= needOf(problem, promise.case) &&
    waysOf(problem, promise.case).some(({ parts }) => parts.some((part) => part.includes(promise.set)))
  );
}
