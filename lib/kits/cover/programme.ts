import type { Constraint, IntegerProgramme } from '../solver';
import { type CoverProblem, NOTHING } from './problem';
import type { Reachable } from './search';
import { mostUseful } from './types';

/** The kit as an integer programme, and how to read its answer. */
export interface KitProgramme {
  base: Omit<IntegerProgramme, 'objective' | 'startFrom'>;
  /** The aims that the programme stages, each with its coefficients, in their order. */
  aims: number[][];
  /** Variables of the sets, by number of the set. */
  sets: number[];
  /** Variables of the packs, by number of the pack. */
  packs: number[];
}

/**
 * Variables: each set open or not; how many of each pack; whether an item is at hand in the number a chain asks for;
 * per chain which candidates and pairs are chosen (continuous: on a tree they come out whole once the items are);
 * and the flow of pieces to their needs, equal needs together. The aims are staged by `solve`.
 */
export function kitProgramme(problem: CoverProblem, reach: Reachable): KitProgramme {
  const lower: number[] = [];
  const upper: (number | null)[] = [];
  const integer: boolean[] = [];
  const constraints: Constraint[] = [];
  const variable = (most: number | null, whole: boolean): number => {
    lower.push(0);
    upper.push(most);
    integer.push(whole);
    return lower.length - 1;
  };
  const constrain = (terms: [number, number][], least: number | null, most: number | null) =>
    constraints.push({
      variables: terms.map(([number]) => number),
      coefficients: terms.map(([, coefficient]) => coefficient),
      lower: least,
      upper: most,
    });

  const useful = mostUseful(problem);
  const sets = problem.sets.map(() => variable(1, true));
  const packs = problem.packs.map(({ item, quantity }) =>
    variable(Math.min(quantity, useful.get(item) ?? 0), true),
  );

  /** Pieces of an item in what is chosen, at most `cap` from any one set. */
  const supply = (item: number, cap: number): [number, number][] => {
    const terms: [number, number][] = [];
    problem.sets.forEach(({ holds }, number) => {
      const count = Math.min(holds.get(item) ?? 0, cap);
      if (count > 0) terms.push([sets[number] as number, count]);
    });
    problem.packs.forEach((pack, number) => {
      if (pack.item === item) terms.push([packs[number] as number, 1]);
    });
    return terms;
  };

  const anyOf = (items: Set<number>): [number, number][] => [
    ...problem.sets.flatMap(({ holds }, number): [number, number][] =>
      [...items].some((item) => (holds.get(item) ?? 0) > 0) ? [[sets[number] as number, 1]] : [],
    ),
    ...problem.packs.flatMap(({ item }, number): [number, number][] =>
      items.has(item) ? [[packs[number] as number, 1]] : [],
    ),
  ];

  const present = new Map<string, number>();
  const atHand = (item: number, pieces: number): number => {
    const key = `${item}/${pieces}`;
    const known = present.get(key);
    if (known !== undefined) return known;
    const made = variable(1, true);
    present.set(key, made);
    constrain([...supply(item, pieces), [made, -pieces]], 0, null);
    return made;
  };

  for (const number of reach.chains) {
    const chain = problem.chains[number] as CoverProblem['chains'][number];
    // the commonest line, any one of some items, is one row over sets and packs and nothing more
    if (isAnyOf(chain)) {
      const any = new Set(chain.slots[0]?.candidates);
      if (!any.has(NOTHING)) constrain(anyOf(any), 1, null);
      continue;
    }
    const chosen = chain.slots.map(({ candidates, pieces }) => {
      const variables = candidates.map((item) => {
        const picked = variable(1, false);
        if (item !== NOTHING)
          constrain(
            [
              [picked, 1],
              [atHand(item, pieces), -1],
            ],
            null,
            0,
          );
        return picked;
      });
      constrain(
        variables.map((picked): [number, number] => [picked, 1]),
        1,
        1,
      );
      return variables;
    });
    for (const { first, second, pairs } of chain.links) {
      const together = pairs.map(() => variable(1, false));
      for (const [side, slot] of [
        [0, first],
        [1, second],
      ] as const) {
        chosen[slot]?.forEach((picked, candidate) => {
          const mine = pairs.flatMap((pair, at): [number, number][] =>
            pair[side] === candidate ? [[together[at] as number, 1]] : [],
          );
          constrain([...mine, [picked, -1]], 0, 0);
        });
      }
    }
  }

  const groups = new Map<string, { accepts: CoverProblem['pieces'][number]['accepts']; needs: number }>();
  for (const { accepts } of problem.pieces) {
    const key = accepts.map(({ item, longerMm }) => `${item}+${longerMm}`).join();
    const group = groups.get(key);
    if (group) group.needs += 1;
    else groups.set(key, { accepts, needs: 1 });
  }
  const given = new Map<number, [number, number][]>();
  const everything: [number, number][] = [];
  const longer: [number, number][] = [];
  for (const { accepts, needs } of groups.values()) {
    const terms = accepts.map(({ item, longerMm }): [number, number] => {
      const sent = variable(needs, false);
      given.set(item, [...(given.get(item) ?? []), [sent, 1]]);
      everything.push([sent, 1]);
      if (longerMm > 0) longer.push([sent, longerMm]);
      return [sent, 1];
    });
    constrain(terms, null, needs);
  }
  if (everything.length > 0) constrain(everything, reach.pieces, null);
  for (const [item, terms] of given) {
    constrain(
      [
        ...terms,
        ...supply(item, Number.POSITIVE_INFINITY).map(([one, count]): [number, number] => [one, -count]),
      ],
      null,
      0,
    );
  }

  const aim = (terms: [number, number][]): number[] => {
    const coefficients = new Array<number>(lower.length).fill(0);
    for (const [number, coefficient] of terms) coefficients[number] = coefficient;
    return coefficients;
  };
  const ofSets = (value: (cost: CoverProblem['sets'][number]['cost']) => number) =>
    problem.sets.map(({ cost }, number): [number, number] => [sets[number] as number, value(cost)]);
  const ofPacks = (value: (cost: CoverProblem['packs'][number]['cost']) => number) =>
    problem.packs.map(({ cost }, number): [number, number] => [packs[number] as number, value(cost)]);
  const aims = [
    aim(ofSets(() => 1)),
    aim(ofPacks(() => 1)),
    aim(longer),
    aim(ofSets((cost) => cost.promises)),
    aim([...ofSets((cost) => cost.useByDays), ...ofPacks((cost) => cost.useByDays)]),
    aim(ofSets((cost) => cost.massGrams)),
    aim([...ofSets((cost) => cost.metres), ...ofPacks((cost) => cost.metres)]),
  ];
  return { base: { lower, upper, integer, constraints }, aims, sets, packs };
}

function isAnyOf({ slots, links }: CoverProblem['chains'][number]): boolean {
  return slots.length === 1 && links.length === 0 && slots[0]?.pieces === 1;
}
