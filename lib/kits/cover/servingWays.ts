import type { CoverProblem } from './problem';
import { type Reachable, reachable, search } from './search';
import { mostCopies, mostUseful, type SetType, setTypes } from './types';

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
 * @param enough ways that open a set after which no more are looked for; the first so many are the same
 */
export function servingWays(
  problem: CoverProblem,
  reach: Reachable,
  enough = Number.POSITIVE_INFINITY,
): ServingWays {
  const types = setTypes(problem);
  const most = mostUseful(problem);
  // by type, the numbers of its copies that a kit could use, in a problem of those alone
  const few = types.map(({ copies, holds }) => copies.slice(0, mostCopies(holds, most)));
  const sets = few.flat().map((number) => problem.sets[number] as CoverProblem['sets'][number]);
  const typeOf = few.flatMap((copies, type) => copies.map(() => type));
  const ways = new Map<string, ServingWay>();
  const seen = new Set<string>();
  const waiting: number[][] = [few.map((copies) => copies.length)];
  let all = true;
  for (let limits = waiting.shift(); limits; limits = waiting.shift()) {
    const key = limits.join(' ');
    if (seen.has(key)) continue;
    if (seen.size >= MOST_SOLVED) return { ways: [...ways.values()], all: false };
    seen.add(key);
    const limited = withAtMost({ ...problem, sets }, typeOf, limits);
    if (!meetsAsMuch(reachable(limited), reach)) continue;
    const { best } = search(limited, reach);
    if (!best) {
      all = false;
      continue;
    }
    const taken = new Map<number, number>();
    for (const set of best.sets) {
      const type = typeOf[set] as number;
      taken.set(type, (taken.get(type) ?? 0) + 1);
    }
    const parts = [...taken]
      .sort(([a], [b]) => a - b)
      .flatMap(([type, times]) => Array.from({ length: times }, () => [...(types[type] as SetType).copies]));
    ways.set(`${parts.map((part) => part[0]).join(' ')}|${best.packs.join(' ')}`, {
      parts,
      packs: best.packs,
    });
    if (opening(ways) >= enough) return { ways: [...ways.values()], all: false };
    for (const [type, times] of taken)
      waiting.push(limits.map((atMost, at) => (at === type ? times - 1 : atMost)));
  }
  return { ways: [...ways.values()], all };
}

const opening = (ways: ReadonlyMap<string, ServingWay>): number =>
  [...ways.values()].filter(({ parts }) => parts.length > 0).length;

/** The same with at most so many copies of each type, which stand side by side; the others hold nothing. */
function withAtMost(
  problem: CoverProblem,
  typeOf: readonly number[],
  limits: readonly number[],
): CoverProblem {
  const before = new Map<number, number>();
  const sets = problem.sets.map((set, number) => {
    const type = typeOf[number] as number;
    const place = before.get(type) ?? 0;
    before.set(type, place + 1);
    return place < (limits[type] as number) ? set : { ...set, holds: NOTHING_HELD };
  });
  return { ...problem, sets };
}

const NOTHING_HELD = new Map<number, number>();

function meetsAsMuch(one: Reachable, wanted: Reachable): boolean {
  const chains = new Set(one.chains);
  return one.pieces >= wanted.pieces && wanted.chains.every((chain) => chains.has(chain));
}
