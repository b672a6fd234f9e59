import type { CoverProblem } from './problem';
import { type Reachable, reachable, search } from './search';
import { type SetType, setTypes } from './types';

/** One way to meet all that can be met: a set out of each part, no set twice, and these packs. */
export interface ServingWay {
  /** Numbers of sets, alike in all that is needed of them. */
  parts: number[][];
  /** By pack: how many to fetch. */
  packs: number[];
}

export interface ServingWays {
  ways: ServingWay[];
  /** False when there may be more: the limit was reached, or a search gave up. */
  all: boolean;
}

/** Kits worked out for one plan before it is left at those found. */
const MOST_SOLVED = 80;

/**
 * The ways to meet what is wanted, so that whatever sets turn out to be free, one of the ways
 * uses only those, if any kit does. The best kit is the first; then, for each kind of set in a kit, the best kit with fewer of that
 * kind, and so on, until no kit is left that meets as much.
 *
 * @param reach what is to be met: all that can be with everything in reach, or some of its chains alone
 */
export function servingWays(problem: CoverProblem, reach: Reachable): ServingWays {
  const types = setTypes(problem);
  const typeOf = new Map(types.flatMap(({ copies }, type) => copies.map((copy) => [copy, type] as const)));
  const ways = new Map<string, ServingWay>();
  const seen = new Set<string>();
  const waiting: number[][] = [types.map(({ copies }) => copies.length)];
  let all = true;
  for (let limits = waiting.shift(); limits; limits = waiting.shift()) {
    const key = limits.join(' ');
    if (seen.has(key)) continue;
    if (seen.size >= MOST_SOLVED) return { ways: [...ways.values()], all: false };
    seen.add(key);
    const limited = withAtMost(problem, types, limits);
    if (!meetsAsMuch(reachable(limited), reach)) continue;
    const { best } = search(limited, reach);
    if (!best) {
      all = false;
      continue;
    }
    const taken = new Map<number, number>();
    for (const set of best.sets) {
      const type = typeOf.get(set) as number;
      taken.set(type, (taken.get(type) ?? 0) + 1);
    }
    const parts = [...taken]
      .sort(([a], [b]) => a - b)
      .flatMap(([type, times]) => Array.from({ length: times }, () => [...(types[type] as SetType).copies]));
    ways.set(`${parts.map((part) => part[0]).join(' ')}|${best.packs.join(' ')}`, {
      parts,
      packs: best.packs,
    });
    for (const [type, times] of taken)
      waiting.push(limits.map((most, at) => (at === type ? times - 1 : most)));
  }
  return { ways: [...ways.values()], all };
}

/** The same with at most so many copies of each type; the others hold nothing. */
function withAtMost(
  problem: CoverProblem,
  types: readonly SetType[],
  limits: readonly number[],
): CoverProblem {
  const left = new Set(types.flatMap(({ copies }, type) => copies.slice(limits[type])));
  if (left.size === 0) return problem;
  return {
    ...problem,
    sets: problem.sets.map((set, number) => (left.has(number) ? { ...set, holds: new Map() } : set)),
  };
}

function meetsAsMuch(one: Reachable, wanted: Reachable): boolean {
  const chains = new Set(one.chains);
  return one.pieces >= wanted.pieces && wanted.chains.every((chain) => chains.has(chain));
}
