/**
 * The kit as a bare problem: numbered items, sets and packs that hold them, and lines that must be met. It knows
 * nothing of surgery, so that it can be solved, checked against exhaustive search, and used by the calculations.
 */
export interface CoverProblem {
  /** Items are numbered from 0. */
  itemCount: number;
  sets: CoverSet[];
  packs: CoverPack[];
  chains: CoverChain[];
  /** Each asks for one piece of its own; together they compete for the pieces. */
  pieces: CoverPiece[];
}

export interface CoverSet {
  /** Pieces by item; only items that some line looks at matter. */
  holds: Map<number, number>;
  cost: SetCost;
}

export interface SetCost {
  /** How far this choice is from what is promised; 0, promised to this very case, is best. */
  promises: number;
  /** Days from the case to the use-by; a set without one counts as the longest. */
  useByDays: number;
  massGrams: number;
  metres: number;
}

export interface CoverPack {
  item: number;
  quantity: number;
  cost: { useByDays: number; metres: number };
}

/** Met when each slot has a candidate at hand such that every link holds. Slots and links form a tree. */
export interface CoverChain {
  slots: { candidates: number[]; pieces: number }[];
  links: { first: number; second: number; pairs: [number, number][] }[];
}

/** A candidate that is no item: always at hand. */
export const NOTHING = -1;

export interface CoverPiece {
  accepts: { item: number; longerMm: number }[];
}

/** What is at hand: pieces by item. */
export type AtHand = Int32Array;

/** Which sets are opened and how many of each pack are fetched. */
export interface Choice {
  sets: number[];
  packs: number[];
}

/**
 * What a choice costs, aim by aim in their order: trays, packs, millimetres longer than stated, promises,
 * days to use-by, grams of trays, metres. Compared from the left.
 */
export type Cost = readonly [number, number, number, number, number, number, number];

/** Negative when `a` is the better. */
export function compareCosts(a: Cost, b: Cost): number {
  for (let aim = 0; aim < a.length; aim += 1) {
    const difference = (a[aim] as number) - (b[aim] as number);
    if (difference !== 0) return difference;
  }
  return 0;
}

export function nothingAtHand(problem: CoverProblem): AtHand {
  return new Int32Array(problem.itemCount);
}

/** Adds what a set holds to what is at hand (or takes it away again, with `times` −1). */
export function addSet(atHand: AtHand, set: CoverSet, times = 1): void {
  for (const [item, count] of set.holds) atHand[item] = (atHand[item] ?? 0) + times * count;
}

export function addPacks(atHand: AtHand, problem: CoverProblem): void {
  for (const { item, quantity } of problem.packs) atHand[item] = (atHand[item] ?? 0) + quantity;
}

/** Everything of a choice together. */
export function atHandOf(problem: CoverProblem, choice: Choice): AtHand {
  const atHand = nothingAtHand(problem);
  for (const set of choice.sets) addSet(atHand, problem.sets[set] as CoverSet);
  choice.packs.forEach((quantity, pack) => {
    const { item } = problem.packs[pack] as CoverPack;
    atHand[item] = (atHand[item] ?? 0) + quantity;
  });
  return atHand;
}
