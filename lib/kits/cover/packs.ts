import { isClosed, waysToClose } from './closure';
import { givePieces, type PieceChoice } from './pieces';
import {
  type AtHand,
  addPacks,
  addSet,
  type Cost,
  type CoverPack,
  type CoverProblem,
  compareCosts,
  nothingAtHand,
} from './problem';

/** The best a tray choice can come to: which packs it needs beside it, and what the whole costs. */
export interface Completed {
  sets: number[];
  /** By pack: how many to fetch. */
  packs: number[];
  pieces: PieceChoice;
  cost: Cost;
  /** False when there were too many ways to look at all of them. */
  exact: boolean;
}

const MOST_WAYS_LOOKED_AT = 60_000;

/**
 * Completes opened sets with the fewest packs, first expired first out. Chains and pieces are apart: no item
 * is both an instrument and a piece that stays.
 *
 * @param chains numbers of the chains that must be closed
 */
export function complete(
  problem: CoverProblem,
  chains: readonly number[],
  sets: readonly number[],
): Completed {
  const fromSets = nothingAtHand(problem);
  for (const set of sets) addSet(fromSets, problem.sets[set] as CoverProblem['sets'][number]);
  const pieces = givePieces(problem, fromSets, problem.packs);
  const instruments = fewestPacks(problem, chains, fromSets);
  const packs = problem.packs.map(() => 0);
  for (const given of pieces.given) if (given?.pack != null) packs[given.pack] = (packs[given.pack] ?? 0) + 1;
  instruments.taken.forEach((quantity, pack) => {
    packs[pack] = (packs[pack] ?? 0) + quantity;
  });
  let promises = 0;
  let useByDays = pieces.useByDays + instruments.useByDays;
  let massGrams = 0;
  let metres = pieces.metres + instruments.metres;
  for (const set of sets) {
    const { cost } = problem.sets[set] as CoverProblem['sets'][number];
    promises += cost.promises;
    useByDays += cost.useByDays;
    massGrams += cost.massGrams;
    metres += cost.metres;
  }
  const count = pieces.packs + instruments.count;
  return {
    sets: [...sets],
    packs,
    pieces,
    cost: [sets.length, count, pieces.longerMm, promises, useByDays, massGrams, metres],
    exact: instruments.exact,
  };
}

interface Fetched {
  /** By pack. */
  taken: Map<number, number>;
  count: number;
  useByDays: number;
  metres: number;
  exact: boolean;
}

/** The fewest packs that close the chains which the sets leave open. */
function fewestPacks(problem: CoverProblem, chains: readonly number[], fromSets: AtHand): Fetched {
  const available = nothingAtHand(problem);
  addPacks(available, problem);
  const open = chains.map((chain) => problem.chains[chain] as CoverProblem['chains'][number]);
  const unmet = open.filter((chain) => !isClosed(chain, fromSets));
  const ways = unmet
    .map((chain) => waysToClose(chain, fromSets, available))
    .sort((a, b) => a.length - b.length);
  const shelf = shelves(problem.packs);
  let best: Fetched | null = null;
  let looked = 0;

  const go = (at: number, taken: Map<number, number>): void => {
    looked += 1;
    if (looked > MOST_WAYS_LOOKED_AT) return;
    const cost = fetch(taken, shelf, problem.packs);
    if (best && compareCosts(asCost(cost), asCost(best)) >= 0) return;
    if (at === ways.length) {
      best = cost;
      return;
    }
    for (const way of ways[at] as Map<number, number>[]) {
      const more = new Map(taken);
      for (const [item, count] of way) more.set(item, Math.max(count, more.get(item) ?? 0));
      go(at + 1, more);
    }
  };
  go(0, new Map());
  const found = (best as Fetched | null) ?? fetch(new Map(), shelf, problem.packs);
  return { ...found, exact: looked <= MOST_WAYS_LOOKED_AT };
}

const asCost = ({ count, useByDays, metres }: Fetched): Cost => [0, count, 0, 0, useByDays, 0, metres];

/** Packs of each item, first expired first, then nearest. */
function shelves(packs: readonly CoverPack[]): Map<number, number[]> {
  const byItem = new Map<number, number[]>();
  packs.forEach(({ item }, pack) => {
    const list = byItem.get(item);
    if (list) list.push(pack);
    else byItem.set(item, [pack]);
  });
  const cost = (pack: number) => (packs[pack] as CoverPack).cost;
  for (const list of byItem.values()) {
    list.sort((a, b) => cost(a).useByDays - cost(b).useByDays || cost(a).metres - cost(b).metres);
  }
  return byItem;
}

function fetch(
  items: Map<number, number>,
  shelf: Map<number, number[]>,
  packs: readonly CoverPack[],
): Fetched {
  const fetched: Fetched = { taken: new Map(), count: 0, useByDays: 0, metres: 0, exact: true };
  for (const [item, count] of items) {
    let left = count;
    for (const pack of shelf.get(item) ?? []) {
      if (left === 0) break;
      const { quantity, cost } = packs[pack] as CoverPack;
      const here = Math.min(left, quantity);
      if (here === 0) continue;
      left -= here;
      fetched.taken.set(pack, here);
      fetched.count += here;
      fetched.useByDays += here * cost.useByDays;
      fetched.metres += here * cost.metres;
    }
  }
  return fetched;
}
