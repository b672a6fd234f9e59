import fc from 'fast-check';
import type { CoverChain, CoverProblem } from '@/lib/kits/cover/problem';

/** Items 0–3 are instruments, 4–6 pieces that stay: no item is both. */
const INSTRUMENTS = [0, 1, 2, 3];
const PIECES = [4, 5, 6];
const ITEM_COUNT = 7;

const slot = fc.record({
  candidates: fc.uniqueArray(fc.constantFrom(...INSTRUMENTS), { minLength: 1, maxLength: 3 }),
  pieces: fc.constantFrom(1, 1, 1, 2),
});

/** A chain whose links make a tree: each slot but the first is linked to an earlier one. */
const chain: fc.Arbitrary<CoverChain> = fc
  .array(
    fc.record({ slot, parent: fc.nat(), keep: fc.array(fc.boolean(), { minLength: 9, maxLength: 9 }) }),
    {
      minLength: 1,
      maxLength: 3,
    },
  )
  .map((parts) => ({
    slots: parts.map((part) => part.slot),
    links: parts.slice(1).map(({ slot: mine, parent, keep }, at) => {
      const first = parent % (at + 1);
      const theirs = parts[first]?.slot.candidates ?? [];
      const pairs = theirs.flatMap((_, i) => mine.candidates.map((_, j): [number, number] => [i, j]));
      return { first, second: at + 1, pairs: pairs.filter((_, index) => keep[index % 9]) };
    }),
  }));

const cost = fc.record({
  promises: fc.constantFrom(0, 0, 1),
  useByDays: fc.nat(40),
  massGrams: fc.nat(9),
  metres: fc.nat(9),
});

/** Small enough for every choice to be looked at. */
export const smallProblem: fc.Arbitrary<CoverProblem> = fc.record({
  itemCount: fc.constant(ITEM_COUNT),
  sets: fc.array(
    fc.record({
      holds: fc
        .array(fc.tuple(fc.nat(ITEM_COUNT - 1), fc.integer({ min: 1, max: 2 })), { maxLength: 5 })
        .map((entries) => new Map(entries)),
      cost,
    }),
    { maxLength: 5 },
  ),
  packs: fc.array(
    fc.record({
      item: fc.nat(ITEM_COUNT - 1),
      quantity: fc.integer({ min: 1, max: 2 }),
      cost: fc.record({ useByDays: fc.nat(40), metres: fc.nat(9) }),
    }),
    { maxLength: 3 },
  ),
  chains: fc.array(chain, { maxLength: 3 }),
  pieces: fc.array(
    fc.record({
      accepts: fc
        .uniqueArray(fc.constantFrom(...PIECES), { maxLength: 2 })
        .map((items) => items.map((item, at) => ({ item, longerMm: at * 2 }))),
    }),
    { maxLength: 3 },
  ),
});

/** Written apart from the program: a chain closes when some choice of candidates is at hand and all its links hold. */
export function closesByTrying(chain: CoverChain, has: (item: number) => number): boolean {
  const go = (at: number, chosen: number[]): boolean => {
    if (at === chain.slots.length) return true;
    return (chain.slots[at]?.candidates ?? []).some((item, candidate) => {
      if (has(item) < (chain.slots[at]?.pieces ?? 1)) return false;
      const next = [...chosen, candidate];
      const holds = chain.links.every(
        ({ first, second, pairs }) =>
          first > at || second > at || pairs.some(([a, b]) => a === next[first] && b === next[second]),
      );
      return holds && go(at + 1, next);
    });
  };
  return go(0, []);
}

/** The most needs that get a piece, and the fewest millimetres too long among such ways; by trying all. */
export function piecesByTrying(
  problem: CoverProblem,
  has: (item: number) => number,
): { met: number; longer: number } {
  const go = (need: number, left: Map<number, number>): { met: number; longer: number } => {
    const piece = problem.pieces[need];
    if (!piece) return { met: 0, longer: 0 };
    let best = go(need + 1, left);
    for (const { item, longerMm } of piece.accepts) {
      const here = left.get(item) ?? has(item);
      if (here <= 0) continue;
      const rest = go(need + 1, new Map(left).set(item, here - 1));
      const way = { met: rest.met + 1, longer: rest.longer + longerMm };
      if (way.met > best.met || (way.met === best.met && way.longer < best.longer)) best = way;
    }
    return best;
  };
  return go(0, new Map());
}

/** The cost of the best of all choices of sets and packs, by looking at each. */
export function bestByTrying(problem: CoverProblem): number[] | null {
  const all = haves(
    problem,
    problem.sets.map((_, at) => at),
    problem.packs.map(({ quantity }) => quantity),
  );
  const closable = problem.chains.filter((one) => closesByTrying(one, all));
  const most = piecesByTrying(problem, all).met;
  let best: number[] | null = null;
  for (let mask = 0; mask < 2 ** problem.sets.length; mask += 1) {
    const sets = problem.sets.map((_, at) => at).filter((at) => mask & (1 << at));
    for (const packs of quantities(problem.packs.map(({ quantity }) => quantity))) {
      const has = haves(problem, sets, packs);
      const pieces = piecesByTrying(problem, has);
      if (pieces.met < most || !closable.every((one) => closesByTrying(one, has))) continue;
      const sum = (of: (cost: CoverProblem['sets'][number]['cost']) => number) =>
        sets.reduce((total, at) => total + of((problem.sets[at] as CoverProblem['sets'][number]).cost), 0);
      const ofPacks = (of: (cost: CoverProblem['packs'][number]['cost']) => number) =>
        packs.reduce(
          (total, count, at) => total + count * of((problem.packs[at] as CoverProblem['packs'][number]).cost),
          0,
        );
      const cost = [
        sets.length,
        packs.reduce((a, b) => a + b, 0),
        pieces.longer,
        sum((one) => one.promises),
        sum((one) => one.useByDays) + ofPacks((one) => one.useByDays),
        sum((one) => one.massGrams),
        sum((one) => one.metres) + ofPacks((one) => one.metres),
      ];
      if (best === null || before(cost, best)) best = cost;
    }
  }
  return best;
}

function before(a: number[], b: number[]): boolean {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at !== -1 && (a[at] as number) < (b[at] as number);
}

function quantities(most: number[]): number[][] {
  return most.reduce<number[][]>(
    (ways, max) => ways.flatMap((way) => Array.from({ length: max + 1 }, (_, count) => [...way, count])),
    [[]],
  );
}

export function haves(problem: CoverProblem, sets: number[], packs: number[]): (item: number) => number {
  return (item) =>
    sets.reduce((sum, at) => sum + (problem.sets[at]?.holds.get(item) ?? 0), 0) +
    packs.reduce((sum, count, at) => sum + (problem.packs[at]?.item === item ? count : 0), 0);
}
