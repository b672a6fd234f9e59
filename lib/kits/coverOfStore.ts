import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { PlainDate } from '../quantities/plainDate';
import type { CatalogueIndex } from './catalogueIndex';
import { isCautioned } from './cautioned';
import { type CoverChain, type CoverProblem, NOTHING, type SetCost } from './cover/problem';
import { type HeldBy, heldAmong } from './heldBy';
import type { ChainNeed, Needs, PieceNeed } from './need';
import type { KitSettings } from './settings';
import type { StoredPack, StoredSet } from './store';

/**
 * What a line of the bare problem stands for: the need itself; the need without a chain that carries a caution;
 * the need with a second piece of what breaks.
 */
export type LineRole = 'need' | 'withoutCaution' | 'backUp';

/** A bare problem and what its numbers mean. */
export interface StoreProblem {
  problem: CoverProblem;
  /** By number of the item. */
  items: ItemId[];
  numberOf: Map<ItemId, number>;
  /** By number of the chain. */
  lines: { need: ChainNeed; role: LineRole }[];
  /** By number of the piece. */
  pieces: PieceNeed[];
  sets: StoredSet[];
  packs: StoredPack[];
}

/** Ten years: what has no use-by lasts longest. */
const NO_USE_BY_DAYS = 3_650;

/**
 * The needs and what is in store as a bare problem. A length that is not stated asks for no piece in particular, so
 * it is left out; links that are not established are left out too: neither is ever counted as met.
 */
export function coverOfStore(given: {
  needs: Needs;
  sets: StoredSet[];
  packs: StoredPack[];
  caseDate: PlainDate;
  index: CatalogueIndex;
  settings: KitSettings;
  /** Where each item lies among `sets`, where many plans are asked about the same sets. */
  heldBy?: HeldBy;
}): StoreProblem {
  const { needs, sets, packs, caseDate, index, settings, heldBy } = given;
  const items: ItemId[] = [];
  const numberOf = new Map<ItemId, number>();
  const number = (id: ItemId): number => {
    const known = numberOf.get(id);
    if (known !== undefined) return known;
    numberOf.set(id, items.length);
    return items.push(id) - 1;
  };
  const lines: StoreProblem['lines'] = [];
  const chains: CoverChain[] = [];
  const add = (need: ChainNeed, role: LineRole, chain: CoverChain | null) => {
    if (!chain) return;
    lines.push({ need, role });
    chains.push(chain);
  };
  const kindOf = (id: ItemId) => index.byId.get(id)?.kind;
  for (const need of needs.chains) {
    const whole = coverChain(need, number, () => true);
    add(need, 'need', whole);
    add(need, 'withoutCaution', hasCaution(need) ? withoutCaution(need, number) : null);
    add(need, 'backUp', withBackUp(need, whole, settings.backUps, kindOf));
  }
  const pieces = needs.pieces.filter((need) => need.length?.kind !== 'notStated');
  const coverPieces = pieces.map(({ accepts }) => ({
    accepts: accepts.map(({ itemId, longerUm }) => ({
      item: number(itemId),
      longerMm: Math.round(longerUm / 1000),
    })),
  }));
  const current = (id: ItemId) => index.byId.get(id)?.status === 'current';
  // sets that hold the same often share one list of it: it is gone through once
  const known = new Map<StoredSet['contents'], Map<number, number>>();
  const heldIn = (contents: StoredSet['contents']) => {
    const before = known.get(contents);
    if (before) return before;
    const holds = new Map<number, number>();
    known.set(contents, holds);
    for (const { itemId, found } of contents) {
      const item = numberOf.get(itemId);
      if (item === undefined || found <= 0 || !current(itemId)) continue;
      holds.set(item, (holds.get(item) ?? 0) + found);
    }
    return holds;
  };
  const heldOf = heldBy ? heldAmong(sets.length, numberOf, heldBy, current) : null;
  const coverSets = sets.map((set, at) => ({
    holds: heldOf?.[at] ?? heldIn(set.contents),
    cost: setCost(set, caseDate, settings),
  }));
  const usedPacks = packs.filter(({ itemId }) => numberOf.has(itemId) && current(itemId));
  const coverPacks = usedPacks.map(({ itemId, quantity, useBy, place }) => ({
    item: number(itemId),
    quantity,
    cost: { useByDays: daysBetween(caseDate, useBy), metres: place?.metres ?? 0 },
  }));
  return {
    problem: { itemCount: items.length, sets: coverSets, packs: coverPacks, chains, pieces: coverPieces },
    items,
    numberOf,
    lines,
    pieces,
    sets,
    packs: usedPacks,
  };
}

/** Waiting for a set weighs more than breaking a promise: what is there now comes first. */
const WAITING = 1_000;

export function setCost(set: StoredSet, caseDate: PlainDate, settings: KitSettings): SetCost {
  const waits = set.step === 'inSterileStore' ? 0 : WAITING;
  return {
    promises: waits + promiseCost(set),
    useByDays: daysBetween(caseDate, set.useBy),
    massGrams: set.massGrams ?? settings.unknownMassGrams,
    metres: set.place?.metres ?? 0,
  };
}

/** Of sets that serve as well, one promised to this very case comes first, and one promised to another last. */
function promiseCost({ promisedTo, promisedHere }: StoredSet): number {
  if (promisedTo.length > 0) return 2;
  return promisedHere ? 0 : 1;
}

function daysBetween(from: PlainDate, to: PlainDate | null): number {
  if (to === null) return NO_USE_BY_DAYS;
  const days = dayNumber(to) - dayNumber(from);
  return Math.max(0, Math.min(NO_USE_BY_DAYS, days));
}

/** Dates come again and again: thousands of sets have few use-bys. */
const numbers = new Map<PlainDate, number>();
const MOST_DATES = 5_000;

function dayNumber(date: PlainDate): number {
  const known = numbers.get(date);
  if (known !== undefined) return known;
  if (numbers.size >= MOST_DATES) numbers.clear();
  const number = Math.round(Date.parse(date) / 86_400_000);
  numbers.set(date, number);
  return number;
}

type Keeps = (answers: Parameters<typeof isCautioned>[0][]) => boolean;

/** The established part of a chain, as numbers. Slots keep their order; an empty slot keeps the chain open for good. */
export function coverChain(need: ChainNeed, number: (id: ItemId) => number, keeps: Keeps): CoverChain {
  const places = need.slots.map(({ candidates }) => {
    let next = 0;
    return candidates.map((one) => (one.established && keeps(one.answers) ? next++ : -1));
  });
  return {
    slots: need.slots.map(({ candidates, pieces }, slot) => ({
      candidates: candidates
        .filter((_, at) => places[slot]?.[at] !== -1)
        .map(({ itemId }) => (itemId === null ? NOTHING : number(itemId))),
      pieces,
    })),
    links: need.links.map(({ first, second, pairs }) => ({
      first,
      second,
      pairs: pairs
        .filter((pair) => pair.established && (pair.answer === null || keeps([pair.answer])))
        .map((pair): [number, number] => [
          places[first]?.[pair.first] ?? -1,
          places[second]?.[pair.second] ?? -1,
        ])
        .filter(([a, b]) => a !== -1 && b !== -1),
    })),
  };
}

/** Every candidate and pair, established or not: what might serve if the missing values were known. */
export function possibleChain(need: ChainNeed, number: (id: ItemId) => number): CoverChain {
  return {
    slots: need.slots.map(({ candidates, pieces }) => ({
      candidates: candidates.map(({ itemId }) => (itemId === null ? NOTHING : number(itemId))),
      pieces,
    })),
    links: need.links.map(({ first, second, pairs }) => ({
      first,
      second,
      pairs: pairs.map((pair): [number, number] => [pair.first, pair.second]),
    })),
  };
}

const noCaution: Keeps = (answers) => !answers.some(isCautioned);

function hasCaution({ slots, links }: ChainNeed): boolean {
  return (
    slots.some(({ candidates }) => candidates.some(({ answers }) => answers.some(isCautioned))) ||
    links.some(({ pairs }) => pairs.some(({ answer }) => answer !== null && isCautioned(answer)))
  );
}

export function withoutCaution(need: ChainNeed, number: (id: ItemId) => number): CoverChain | null {
  const chain = coverChain(need, number, noCaution);
  return chain.slots.every(({ candidates }) => candidates.length > 0) ? chain : null;
}

function withBackUp(
  need: ChainNeed,
  chain: CoverChain,
  backUps: KitSettings['backUps'],
  kindOf: (id: ItemId) => Item['kind'] | undefined,
): CoverChain | null {
  const breaks = need.slots.map(({ candidates }) =>
    candidates.some(({ itemId }) => itemId !== null && backUps.some((kind) => kind === kindOf(itemId))),
  );
  if (!breaks.includes(true)) return null;
  return {
    ...chain,
    slots: chain.slots.map((slot, at) => (breaks[at] ? { ...slot, pieces: slot.pieces + 1 } : slot)),
  };
}
