import type { EarlyUse } from './earlyUses';
import type { SetGroup } from './groups';
import { AIM, RANKS } from './plan';
import { type PlannedCase, readyOf, type TurnaroundProblem } from './problem';
import type { Column, ProgrammeAim } from './programme';

interface Chosen {
  groups: readonly SetGroup[];
  columns: readonly Column[];
  early: readonly EarlyUse[];
  /** Per case the variables of which one is 1 where it is served. */
  served: ReadonlyMap<number, readonly (readonly [number, number])[]>;
  penalties: readonly { case: number; variable: number; penalty: number }[];
}

/** The aims of `AIM` over what the programme chooses, all of them to be made small. */
export function programmeAims(
  problem: TurnaroundProblem,
  cases: readonly number[],
  { groups, columns, early, served, penalties }: Chosen,
): ProgrammeAim[] {
  const aims: ProgrammeAim[] = Array.from({ length: AIM.penalty + 1 }, () => ({
    terms: [],
    constant: 0,
    most: 0,
  }));
  const aim = (number: number) => aims[number] as ProgrammeAim;
  for (const one of cases) {
    const { rank } = problem.cases[one] as PlannedCase;
    const unserved = aim(AIM.unserved + Math.min(rank, RANKS - 1));
    unserved.constant += 1;
    for (const [variable] of served.get(one) ?? []) unserved.terms.push([variable, -1]);
  }
  const here = new Set(cases);
  for (const { case: one, set, moveCost, fixed } of problem.promises) {
    if (!here.has(one)) continue;
    const keeping = columns.filter(
      (column) =>
        column.case === one &&
        groups[column.group]?.members.includes(set) &&
        readyOf(problem, set) <= column.needMs,
    );
    const cost = (number: number, amount: number) => {
      aim(number).constant += amount;
      if (amount > 0) for (const { variable } of keeping) aim(number).terms.push([variable, -amount]);
    };
    cost(AIM.movedCost, moveCost);
    if (fixed) cost(AIM.fixedBroken, 1);
  }
  for (const { variable, minutes } of early) aim(AIM.riskMinutes).terms.push([variable, minutes]);
  for (const { variable, penalty } of penalties) aim(AIM.penalty).terms.push([variable, penalty]);
  aims.forEach((one, number) => {
    one.most =
      number === AIM.riskMinutes
        ? mostPer(early.map(({ by, minutes }) => ({ case: `${by.case}/${by.part}`, amount: minutes })))
        : number === AIM.penalty
          ? mostPer(penalties.map(({ case: of, penalty }) => ({ case: of, amount: penalty })))
          : one.constant;
    one.terms = [...sumByVariable(one.terms)];
  });
  return aims;
}

/** Each case adds one of its amounts at the most. */
function mostPer(amounts: readonly { case: number | string; amount: number }[]): number {
  const most = new Map<number | string, number>();
  for (const { case: one, amount } of amounts) most.set(one, Math.max(most.get(one) ?? 0, amount));
  return [...most.values()].reduce((sum, one) => sum + one, 0);
}

export function sumByVariable(terms: readonly (readonly [number, number])[]): Map<number, number> {
  const sums = new Map<number, number>();
  for (const [variable, coefficient] of terms) sums.set(variable, (sums.get(variable) ?? 0) + coefficient);
  return sums;
}
