import type { SetId, StockId } from '../identity/ids';
import { isPastUseBy, type PlainDate } from '../quantities/plainDate';
import { availableFor } from './availability';
import type { KitQuestion } from './caseKit';
import { indexCatalogue } from './catalogueIndex';
import type { CoverProblem } from './cover/problem';
import { reachable } from './cover/search';
import { servingWays } from './cover/servingWays';
import { upToUse } from './cover/types';
import { coverOfStore, type StoreProblem } from './coverOfStore';
import { keptForStore, keptNeeds } from './keptWays';
import { helpingItems, type MissingPieces, missingPieces } from './missingPieces';
import type { StoredSet } from './store';

/** One way to serve a planned case: a set out of each part, no set twice, and these packs with them. */
export interface WayToServe {
  /** For each tray, the sets that are alike in all that the plan needs of them. */
  parts: SetId[][];
  packs: { stockId: StockId; quantity: number }[];
  /** It has every back-up that can be had, and no chain with a caution where there is one without. */
  asWished: boolean;
}

export interface WaysToServe {
  /** Whether the plan can be met at all by what the hospital has, wherever that is now. */
  outcome: 'canBeMet' | 'short' | 'nothingNeeded';
  ways: WayToServe[];
  /** False when there may be more ways than these. */
  all: boolean;
  /** Where it is short: of what. */
  missing: MissingPieces[];
  /** Sets that hold some of what is missing and can't come round: held, let go for one other case, past use-by on the day. */
  outOfReach: string[];
}

type Question = Pick<KitQuestion, 'construct' | 'caseDate' | 'store' | 'catalogue' | 'engine' | 'settings'>;

/** A way by places: of sets among those that hold anything the plan asks for, of packs among those it can use. */
interface WayByPlace {
  parts: number[][];
  /** By pack: how many to fetch. */
  packs: number[];
  asWished: boolean;
}
type WaysByPlace = Omit<WaysToServe, 'ways' | 'outOfReach'> & { ways: WayByPlace[] };

/**
 * Every way in which the hospital's sets could serve a plan, whichever step they are in now: by what lies in each set now, so
 * that a set that is short serves a plan that does not need the piece. Sets that are held, out of service, let go short for
 * another case, or in store and past use-by on the day are in none. A plan that can't be met whole has no way: what is
 * short of it is for people to decide.
 *
 * Asked for again with the same content in the store, the answer is at hand.
 */
export function waysToServe({
  construct,
  caseDate,
  store,
  catalogue,
  engine,
  settings,
}: Question): WaysToServe {
  const needs = keptNeeds(construct, catalogue, engine);
  const { packs } = availableFor(store, caseDate);
  const comeRound = store.sets.filter((set) => comesRound(set, caseDate));
  const sets = comeRound.map(wherever);
  const all = coverOfStore({ needs, sets, packs, caseDate, index: indexCatalogue(catalogue), settings });
  const useful = upToUse(all.problem);
  const holding = useful.sets.flatMap(({ holds }, at) => (holds.size > 0 ? [at] : []));
  const problem = {
    ...useful,
    sets: holding.map((at) => useful.sets[at] as CoverProblem['sets'][number]),
  };
  const {
    outcome,
    ways,
    all: complete,
    missing,
  } = keptForStore(needs, problem, settings, () => waysByPlace({ ...all, problem }));
  const setAt = (place: number) => (all.sets[holding[place] as number] as StoredSet).id;
  return {
    outcome,
    all: complete,
    missing,
    outOfReach: outOfReach(missing, store.sets, comeRound),
    ways: ways.map(
      ({ parts, packs: fetched, asWished }): WayToServe => ({
        parts: parts.map((part) => part.map(setAt)),
        packs: fetched.flatMap((quantity, pack) =>
          quantity > 0 ? [{ stockId: (all.packs[pack] as StoreProblem['packs'][number]).id, quantity }] : [],
        ),
        asWished,
      }),
    ),
  };
}

function waysByPlace(store: StoreProblem): WaysByPlace {
  const { problem, lines, pieces } = store;
  if (lines.length === 0 && pieces.length === 0)
    return { outcome: 'nothingNeeded', ways: [], all: true, missing: [] };
  const reach = reachable(problem);
  const isNeed = (chain: number) => lines[chain]?.role === 'need';
  if (reach.shortChains.some(isNeed) || reach.pieces < pieces.length)
    return { outcome: 'short', ways: [], all: true, missing: missingPieces(store, reach) };
  const noMoreWished = reach.chains.every(isNeed);
  const wished = noMoreWished ? NONE : waysOf(problem, true);
  // by the needs alone, sets that differ in a back-up are alike
  const chains = problem.chains.filter((_, chain) => isNeed(chain));
  const plain = waysOf({ ...problem, chains }, noMoreWished);
  return {
    outcome: 'canBeMet',
    ways: [...wished.ways, ...plain.ways],
    all: wished.all && plain.all,
    missing: [],
  };
}

/** Codes of the sets that hold some of what is missing and don't come round. */
function outOfReach(
  missing: readonly MissingPieces[],
  all: readonly StoredSet[],
  comeRound: readonly StoredSet[],
): string[] {
  if (missing.length === 0) return [];
  const helping = helpingItems(missing);
  const there = new Set(comeRound);
  return all
    .filter((set) => !there.has(set) && set.contents.some((one) => one.found > 0 && helping.has(one.itemId)))
    .map(({ code }) => code)
    .sort();
}

const NONE = { ways: [], all: true };

function waysOf(problem: CoverProblem, asWished: boolean): { ways: WayByPlace[]; all: boolean } {
  const { ways, all } = servingWays(problem, reachable(problem));
  return { all, ways: ways.map((way) => ({ ...way, asWished })) };
}

/**
 * The set as if it stood in the store, promised to nobody: where it is now, to whom it is promised and how long it keeps change
 * by the hour, and are weighed when sets are given to cases, not in what could serve at all.
 */
const wherever = (set: StoredSet): StoredSet => ({
  ...set,
  step: 'inSterileStore',
  promisedTo: [],
  useBy: null,
});

/** Whether a set can be in the store on a day to come, as far as anybody knows now. */
function comesRound(set: StoredSet, caseDate: PlainDate): boolean {
  if (set.heldBecause !== null || set.step === 'held' || set.shortFor || set.letOutFor) return false;
  return !(set.step === 'inSterileStore' && set.useBy !== null && isPastUseBy(set.useBy, caseDate));
}
