import type { Constraint, IntegerProgramme } from '../kits/solver';
import { capacityRows } from './capacityRows';
import { type EarlyUse, earlyUses } from './earlyUses';
import { type SetGroup, setGroups } from './groups';
import { firmBackOf, firmReadyOf, inTime, needOf, type TurnaroundProblem, waysOf } from './problem';
import { programmeAims, sumByVariable } from './programmeAims';

/** One part of one way of a case, served by a set of one group. */
export interface Column {
  case: number;
  way: number;
  part: number;
  group: number;
  variable: number;
  needMs: number;
  /** When the set is surely back: nine times in ten, with the wanted margin. */
  firmBackMs: number;
}

/** What must be so besides: a case served, perhaps in one of its ways, perhaps by or without a named set. */
export interface Demand {
  case: number;
  way: number | null;
  without: number | null;
}

export interface TurnaroundProgramme {
  base: Omit<IntegerProgramme, 'objective' | 'startFrom'>;
  groups: SetGroup[];
  columns: Column[];
  early: EarlyUse[];
  /** Variable of a whole way, where it has several parts. */
  wholeWays: Map<string, number>;
  /** In the order of `AIM`. */
  aims: ProgrammeAim[];
}

/** One aim: `constant` and the terms of what is chosen, from 0 up to `most`. */
export interface ProgrammeAim {
  terms: [variable: number, coefficient: number][];
  constant: number;
  most: number;
}

/**
 * Sets to cases as an integer programme. Variables: which group serves which part of which way; whole ways of several
 * parts; and early uses, where a set is taken before it is surely back. A group's capacity is one row per largest clique
 * of its overlapping stretches: for one group those rows are an interval matrix, whose corners are whole numbers
 * (Fulkerson & Gross), so that only cases that several groups could serve make it an integer programme at all.
 */
export function turnaroundProgramme(
  problem: TurnaroundProblem,
  cases: readonly number[],
  demand: Demand | null = null,
): TurnaroundProgramme {
  const lower: number[] = [];
  const upper: number[] = [];
  const constraints: Constraint[] = [];
  const variable = (): number => {
    lower.push(0);
    upper.push(1);
    return lower.length - 1;
  };
  const constrain = (
    terms: readonly (readonly [number, number])[],
    least: number | null,
    most: number | null,
  ) =>
    constraints.push({
      variables: terms.map(([number]) => number),
      coefficients: terms.map(([, coefficient]) => coefficient),
      lower: least,
      upper: most,
    });

  const groups = setGroups(problem, cases, new Set(demand?.without == null ? [] : [demand.without]));
  const groupOf = new Map(
    groups.flatMap(({ members }, group) => members.map((set) => [set, group] as const)),
  );
  const columns: Column[] = [];
  const wholeWays = new Map<string, number>();
  const served = new Map<number, [number, number][]>();
  const penalties: { case: number; variable: number; penalty: number }[] = [];
  const taking = new Map<number, [number, number][]>();

  for (const one of cases) {
    const terms: [number, number][] = [];
    waysOf(problem, one).forEach(({ parts, pouches, penalty }, way) => {
      if (demand?.case === one && demand.way !== null && demand.way !== way) return;
      const ready = parts.map((part) => {
        const sets = inTime(problem, one, part);
        return demand?.case === one ? sets.filter((set) => set !== demand.without) : sets;
      });
      if (ready.some((sets) => sets.length === 0)) return;
      const choices = ready.map((sets, part) =>
        [...new Set(sets.map((set) => groupOf.get(set) as number))].map((group): [number, number] => {
          const member = groups[group]?.members[0] as number;
          const added = variable();
          columns.push({
            case: one,
            way,
            part,
            group,
            variable: added,
            needMs: needOf(problem, one),
            firmBackMs: firmBackOf(problem, one, member),
          });
          return [added, 1];
        }),
      );
      let chosen = choices[0] as [number, number][];
      if (choices.length > 1) {
        const whole = variable();
        wholeWays.set(`${one}/${way}`, whole);
        for (const choice of choices) constrain([...choice, [whole, -1]], 0, 0);
        chosen = [[whole, 1]];
      }
      terms.push(...chosen);
      for (const [number] of chosen)
        if (penalty > 0) penalties.push({ case: one, variable: number, penalty });
      for (const pouch of pouches) taking.set(pouch, [...(taking.get(pouch) ?? []), ...chosen]);
    });
    if (demand?.case === one) constrain(terms, 1, 1);
    else if (terms.length > 1) constrain(terms, null, 1);
    served.set(one, terms);
  }
  for (const [pouch, terms] of taking) {
    const there = problem.pouches[pouch] ?? 0;
    const summed = [...sumByVariable(terms)];
    if (summed.reduce((sum, [, most]) => sum + most, 0) > there) constrain(summed, null, there);
  }

  const early = earlyUses(problem, groups, columns, variable);
  for (const terms of early.limits) constrain(terms, null, 0);
  for (const once of early.once) constrain(once, null, 1);
  groups.forEach(({ members }, group) => {
    const mine = columns.filter((column) => column.group === group);
    const readyMs = members.map((set) => firmReadyOf(problem, set)).sort((a, b) => a - b);
    for (const { terms, capacity } of capacityRows(
      mine,
      early.uses.filter((use) => use.group === group),
      readyMs,
    ))
      constrain(terms, null, capacity);
  });

  const aims = programmeAims(problem, cases, { groups, columns, early: early.uses, served, penalties });
  const integer = lower.map(() => true);
  return {
    base: { lower, upper, integer, constraints },
    groups,
    columns,
    early: early.uses,
    wholeWays,
    aims,
  };
}
