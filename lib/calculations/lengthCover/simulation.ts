import type { CoverMethod, Stocks } from './exact';
import { type FamilyCase, type HoleGroup, lengthChances } from './needs';
import { randomNumbers, standardNormals } from './random';
import { holesOf } from './sweep';

export interface SimulationMethod {
  cover: (stocks: Stocks) => number;
  cost: CoverMethod['cost'];
  standardError: (cover: number) => number;
}

/** One need in one trial: the first and last length that will do, by index. */
interface DrawnNeed {
  first: number;
  last: number;
}

/**
 * Seeded simulation: the needs of every trial are drawn once, so that two stocks are compared on the same cases. In each
 * trial the pieces are matched to the needs (short to long, earliest due first: a largest matching for such windows).
 */
export function simulationMethod(
  families: readonly FamilyCase[],
  options: { sharedSdMm: number; notImplanted: number; trials: number; seed: number },
): SimulationMethod {
  const { sharedSdMm, notImplanted, trials, seed } = options;
  const uniform = randomNumbers(seed);
  const normal = standardNormals(uniform);
  const drawn = Array.from({ length: trials }, () => {
    const offset = sharedSdMm > 0 ? sharedSdMm * normal() : 0;
    return families.map((family) => drawNeeds(family, offset, notImplanted, uniform, normal));
  });
  // one family's outcome per trial, so that a change to one family leaves the others as they were
  const outcomes = new Map<string, Uint8Array>();
  const outcomesOf = (at: number, stock: readonly number[]) => {
    const key = `${at}:${stock.join()}`;
    const known = outcomes.get(key);
    if (known) return known;
    const met = Uint8Array.from(drawn, (trial) => {
      const needs = trial[at];
      return needs && suffices(needs, stock) ? 1 : 0;
    });
    outcomes.set(key, met);
    return met;
  };
  return {
    cover(stocks: Stocks) {
      const all = families.map((_, at) => outcomesOf(at, stocks[at] ?? []));
      let met = 0;
      for (let trial = 0; trial < trials; trial += 1) {
        if (all.every((family) => family[trial] === 1)) met += 1;
      }
      return met / trials;
    },
    cost: () => trials * families.reduce((sum, family) => sum + 30 + 40 * holesOf(family), 0),
    // with one trial of each outcome added, so that it is never shown as nothing
    standardError(cover) {
      const share = (cover * trials + 1) / (trials + 2);
      return Math.sqrt((share * (1 - share)) / trials);
    },
  };
}

/** The needs of one family in one trial, by due length; `null` when one of them is not among the lengths made. */
function drawNeeds(
  family: FamilyCase,
  offsetMm: number,
  notImplanted: number,
  uniform: () => number,
  normal: () => number,
): DrawnNeed[] | null {
  const needs: DrawnNeed[] = [];
  let beyond = false;
  for (const group of family.groups) {
    for (let hole = 0; hole < group.size; hole += 1) {
      const length = drawLength(group, family.lengthsMm, offsetMm, uniform, normal);
      const window = group.windows[length];
      if (!window) beyond = true;
      do {
        if (window) needs.push(window);
      } while (uniform() < notImplanted);
    }
  }
  return beyond ? null : needs.sort((a, b) => a.last - b.last);
}

function drawLength(
  group: HoleGroup,
  lengthsMm: readonly number[],
  offsetMm: number,
  uniform: () => number,
  normal: () => number,
): number {
  if (group.need.kind === 'spread') {
    const measured = group.need.meanMm + offsetMm + group.need.sdMm * normal();
    return group.limits.findLastIndex((limit) => limit < measured);
  }
  let left = uniform();
  return lengthChances(group, lengthsMm, 0).findIndex((chance) => {
    left -= chance;
    return left < 0;
  });
}

/** Whether the pieces can serve all needs; `needs` in the order they are due. */
export function suffices(needs: readonly DrawnNeed[], stock: readonly number[]): boolean {
  const served = new Array<boolean>(needs.length).fill(false);
  let left = needs.length;
  let earliest = 0;
  for (let length = 0; left > 0 && length < stock.length; length += 1) {
    let pieces = stock[length] ?? 0;
    for (let at = earliest; at < needs.length; at += 1) {
      const need = needs[at];
      if (!need || served[at] || need.first > length) continue;
      if (pieces === 0) {
        if (need.last <= length) return false;
        continue;
      }
      served[at] = true;
      left -= 1;
      pieces -= 1;
    }
    while (served[earliest]) earliest += 1;
  }
  return left === 0;
}
