import type { SetId, StockId } from '../identity/ids';
import { isPastUseBy, type PlainDate } from '../quantities/plainDate';
import { availableFor } from './availability';
import type { KitQuestion } from './caseKit';
import { indexCatalogue } from './catalogueIndex';
import { type Reachable, reachable } from './cover/search';
import { servingWays } from './cover/servingWays';
import { coverOfStore, type StoreProblem } from './coverOfStore';
import { helpingItems, type MissingPieces, missingPieces } from './missingPieces';
import { needsOf } from './needs';
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

/**
 * Every way in which the hospital's sets could serve a plan, whichever step they are in now: by what lies in each set now, so
 * that a set that is short serves a plan that does not need the piece. Sets that are held, out of service, let go short for
 * another case, or in store and past use-by on the day are in none. A plan that can't be met whole has no way: what is
 * short of it is for people to decide.
 */
export function waysToServe({
  construct,
  caseDate,
  store,
  catalogue,
  engine,
  settings,
}: Question): WaysToServe {
  const needs = needsOf(construct, catalogue, engine);
  const { packs } = availableFor(store, caseDate);
  const sets = store.sets.filter((set) => comesRound(set, caseDate));
  const inReach = coverOfStore({ needs, sets, packs, caseDate, index: indexCatalogue(catalogue), settings });
  if (inReach.lines.length === 0 && inReach.pieces.length === 0)
    return { outcome: 'nothingNeeded', ways: [], all: true, ...NOT_SHORT };
  const reach = reachable(inReach.problem);
  const isNeed = (chain: number) => inReach.lines[chain]?.role === 'need';
  if (reach.shortChains.some(isNeed) || reach.pieces < inReach.pieces.length)
    return { outcome: 'short', ways: [], all: true, ...shortOf(inReach, reach, store.sets, sets) };
  const noMoreWished = reach.chains.every(isNeed);
  const wished = noMoreWished ? NONE : waysOf(inReach, true);
  // by the needs alone, sets that differ in a back-up are alike
  const chains = inReach.problem.chains.filter((_, chain) => isNeed(chain));
  const plain = waysOf({ ...inReach, problem: { ...inReach.problem, chains } }, noMoreWished);
  return {
    outcome: 'canBeMet',
    ways: [...wished.ways, ...plain.ways],
    all: wished.all && plain.all,
    ...NOT_SHORT,
  };
}

const NONE = { ways: [], all: true };
const NOT_SHORT = { missing: [], outOfReach: [] };

function shortOf(
  inReach: StoreProblem,
  reach: Reachable,
  all: readonly StoredSet[],
  comeRound: readonly StoredSet[],
): Pick<WaysToServe, 'missing' | 'outOfReach'> {
  const missing = missingPieces(inReach, reach);
  const helping = helpingItems(missing);
  const away = all.filter((set) => !comeRound.includes(set));
  return {
    missing,
    outOfReach: away
      .filter(({ contents }) => contents.some(({ itemId, found }) => found > 0 && helping.has(itemId)))
      .map(({ code }) => code)
      .sort(),
  };
}

/** Whether a set can be in the store on a day to come, as far as anybody knows now. */
function comesRound(set: StoredSet, caseDate: PlainDate): boolean {
  if (set.heldBecause !== null || set.step === 'held' || set.shortFor || set.letOutFor) return false;
  return !(set.step === 'inSterileStore' && set.useBy !== null && isPastUseBy(set.useBy, caseDate));
}

function waysOf(store: StoreProblem, asWished: boolean) {
  const { ways, all } = servingWays(store.problem, reachable(store.problem));
  return {
    all,
    ways: ways.map(
      ({ parts, packs }): WayToServe => ({
        parts: parts.map((part) => part.map((set) => (store.sets[set] as StoredSet).id)),
        packs: packs.flatMap((quantity, pack) =>
          quantity > 0
            ? [{ stockId: (store.packs[pack] as StoreProblem['packs'][number]).id, quantity }]
            : [],
        ),
        asWished,
      }),
    ),
  };
}
