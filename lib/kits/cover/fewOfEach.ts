import type { CoverProblem } from './problem';
import { mostCopies, mostUseful } from './types';

/** A content, and the sets that hold it, by their number. */
interface SetsAlike {
  holds: Map<number, number>;
  members: readonly number[];
}

interface FewOfEach {
  /** Numbers of the sets that the search need look at, ascending. */
  sets: number[];
  /** By place in `sets`: what the set holds of what the lines look at. */
  holds: Map<number, number>[];
  /** All sets that any of these, by their places, stand for: alike in what the lines look at. The cheapest first. */
  copiesOf(places: readonly number[]): number[];
}

/**
 * Of each kind of set no more copies than a kit could use, the cheapest of them, and the first of its kind, by which kinds are
 * told in the same order. The search never looks at another, so its answer is the same with these alone, however many sets
 * there are.
 *
 * @param alike every set once; those that hold nothing of use are left out
 * @param rank  by number of the set: its place among all from the cheapest on
 */
export function fewOfEach(
  problem: Pick<CoverProblem, 'chains' | 'pieces'>,
  alike: readonly SetsAlike[],
  rank: ArrayLike<number>,
): FewOfEach {
  const useful = mostUseful(problem);
  const types = new Map<string, { holds: Map<number, number>; copies: number[] }>();
  for (const { holds, members } of alike) {
    const used = [...holds]
      .map(([item, count]): [number, number] => [item, Math.min(count, useful.get(item) ?? 0)])
      .filter(([, count]) => count > 0)
      .sort((a, b) => a[0] - b[0]);
    if (used.length === 0) continue;
    const key = used.join(';');
    const type = types.get(key) ?? { holds: new Map(used), copies: [] };
    types.set(key, type);
    for (const set of members) type.copies.push(set);
  }
  const byRank = (a: number, b: number) => (rank[a] as number) - (rank[b] as number);
  const few = [...types.values()].flatMap((type) => {
    const first = type.copies.reduce((least, set) => Math.min(least, set));
    type.copies.sort(byRank);
    const wanted = new Set([...type.copies.slice(0, mostCopies(type.holds, useful)), first]);
    return [...wanted].map((set) => ({ set, type }));
  });
  few.sort((a, b) => a.set - b.set);
  return {
    sets: few.map(({ set }) => set),
    holds: few.map(({ type }) => type.holds),
    copiesOf(places) {
      const of = [...new Set(places.map((place) => few[place]?.type))];
      const copies = of.flatMap((type) => type?.copies ?? []);
      return of.length > 1 ? copies.sort(byRank) : copies;
    },
  };
}
