import { closedBy } from './closure';
import { addPacks, addSet, type CoverProblem, nothingAtHand } from './problem';
import type { Reachable } from './search';
import type { SetType } from './types';

/**
 * What must hold of the opened sets, as plain rows: "at least one of these types". Each is necessary; together they
 * are not enough (a chain also needs its links, pieces compete), but they are quick to reason about and bound well.
 */
export interface Rows {
  count: number;
  /** Words of 32 rows each. */
  words: number;
  /** By type, its words: the rows it meets. */
  masks: Int32Array;
  /** By row, the types that meet it. */
  types: number[][];
}

/**
 * One row for each slot of each chain, and for each piece, that the packs alone do not fill. A row that another one
 * implies is dropped, since whoever meets the smaller meets the larger.
 */
export function necessaryRows(problem: CoverProblem, reach: Reachable, types: SetType[]): Rows {
  const packs = nothingAtHand(problem);
  addPacks(packs, problem);
  const possible = packs.slice();
  for (const set of problem.sets) addSet(possible, set);
  const wanted: number[][] = [];
  const ask = (items: number[]) => {
    if (items.some((item) => item < 0)) return;
    wanted.push(types.flatMap(({ holds }, type) => (items.some((item) => holds.has(item)) ? [type] : [])));
  };
  for (const number of reach.chains) {
    const chain = problem.chains[number] as CoverProblem['chains'][number];
    const fromPacks = closedBy(chain, packs);
    if (fromPacks) continue;
    const alive = closedBy(chain, possible) ?? [];
    chain.slots.forEach(({ candidates, pieces }, slot) => {
      const items = candidates.filter((_, at) => alive[slot]?.[at]);
      if (!items.some((item) => item < 0 || (packs[item] as number) >= pieces)) ask(items);
    });
  }
  // with every need met, each has at least one piece of its own; where some stay short, which ones is open
  if (reach.pieces === problem.pieces.length) {
    for (const { accepts } of problem.pieces) {
      const items = accepts.map(({ item }) => item);
      if (!items.some((item) => (packs[item] as number) > 0)) ask(items);
    }
  }
  return rowsOf(smallestRows(wanted), types.length);
}

function smallestRows(wanted: number[][]): number[][] {
  const sorted = wanted.map((row) => new Set(row)).sort((a, b) => a.size - b.size);
  const kept: Set<number>[] = [];
  for (const row of sorted) {
    if (!kept.some((smaller) => [...smaller].every((type) => row.has(type)))) kept.push(row);
  }
  return kept.map((row) => [...row]);
}

function rowsOf(types: number[][], typeCount: number): Rows {
  const words = Math.max(1, Math.ceil(types.length / 32));
  const masks = new Int32Array(typeCount * words);
  types.forEach((list, row) => {
    for (const type of list) {
      const at = type * words + (row >>> 5);
      masks[at] = (masks[at] as number) | (1 << (row & 31));
    }
  });
  return { count: types.length, words, masks, types };
}

/** Set bits of a word. */
export function bitCount(word: number): number {
  let bits = word - ((word >>> 1) & 0x55555555);
  bits = (bits & 0x33333333) + ((bits >>> 2) & 0x33333333);
  return (((bits + (bits >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}
