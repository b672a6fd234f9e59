import type { SetId, StockId } from '../identity/ids';
import type { KitQuestion } from './caseKit';
import { indexCatalogue } from './catalogueIndex';
import { fewOfEach } from './cover/fewOfEach';
import type { CoverProblem, SetCost } from './cover/problem';
import { reachable } from './cover/search';
import { servingWays } from './cover/servingWays';
import { upToUse } from './cover/types';
import { coverOfStore, type StoreProblem } from './coverOfStore';
import { keptForStore, keptNeeds } from './keptWays';
import { helpingItems, type MissingPieces, missingPieces } from './missingPieces';
import type { Needs } from './need';
import { type SetsToCome, setsToCome } from './setsToCome';
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

/** By the sets of a day and what is asked of them. */
const answered = new WeakMap<SetsToCome, WeakMap<Needs, Answered>>();
interface Answered {
  enough: number | null;
  answer: WaysToServe;
}

/**
 * Every way in which the hospital's sets could serve a plan, whichever step they are in now: by what lies in each set now, so
 * that a set that is short serves a plan that does not need the piece. Sets that are held, out of service, let go short for
 * another case, or in store and past use-by on the day are in none. A plan that can't be met whole has no way: what is
 * short of it is for people to decide.
 *
 * Asked for again with the same content in the store, the answer is at hand; of the same store, the very same object comes
 * back, and nobody may change it.
 *
 * @param enough ways that open a set after which no more are looked for; the first so many are the same
 */
export function waysToServe(
  { construct, caseDate, store, catalogue, engine, settings }: Question,
  enough: number | null = null,
): WaysToServe {
  const needs = keptNeeds(construct, catalogue, engine);
  const toCome = setsToCome(store, caseDate, settings);
  const before = answered.get(toCome) ?? new WeakMap<Needs, Answered>();
  answered.set(toCome, before);
  const known = before.get(needs);
  if (known && known.enough === enough) return known.answer;
  const all = coverOfStore({
    needs,
    sets: toCome.alike.map(({ like }) => like),
    packs: toCome.packs,
    caseDate,
    index: indexCatalogue(catalogue),
    settings,
    heldBy: toCome.heldBy,
  });
  const useful = upToUse(all.problem);
  const alike = toCome.alike.map(({ members }, at) => ({
    holds: (useful.sets[at] as CoverProblem['sets'][number]).holds,
    members,
  }));
  const few = fewOfEach(useful, alike, toCome.rank);
  const problem: CoverProblem = {
    ...useful,
    sets: few.sets.map((set, at) => ({
      holds: few.holds[at] as Map<number, number>,
      cost: toCome.costs[set] as SetCost,
    })),
  };
  const {
    outcome,
    ways,
    all: complete,
    missing,
  } = keptForStore(needs, problem, { settings, enough }, () => waysByPlace({ ...all, problem }, enough));
  const idsOf = (places: readonly number[]) =>
    few.copiesOf(places).map((set) => (toCome.sets[set] as StoredSet).id);
  const answer: WaysToServe = {
    outcome,
    all: complete,
    missing,
    outOfReach: outOfReach(missing, store.sets, toCome.sets),
    ways: ways.map(
      ({ parts, packs: fetched, asWished }): WayToServe => ({
        parts: parts.map(idsOf),
        packs: fetched.flatMap((quantity, pack) =>
          quantity > 0 ? [{ stockId: (all.packs[pack] as StoreProblem['packs'][number]).id, quantity }] : [],
        ),
        asWished,
      }),
    ),
  };
  before.set(needs, { enough, answer });
  return answer;
}

function waysByPlace(store: StoreProblem, enough: number | null): WaysByPlace {
  const { problem, lines, pieces } = store;
  if (lines.length === 0 && pieces.length === 0)
    return { outcome: 'nothingNeeded', ways: [], all: true, missing: [] };
  const reach = reachable(problem);
  const isNeed = (chain: number) => lines[chain]?.role === 'need';
  if (reach.shortChains.some(isNeed) || reach.pieces < pieces.length)
    return { outcome: 'short', ways: [], all: true, missing: missingPieces(store, reach) };
  const noMoreWished = reach.chains.every(isNeed);
  const wished = noMoreWished ? NONE : waysOf(problem, true, enough);
  const opening = wished.ways.filter(({ parts }) => parts.length > 0).length;
  if (enough !== null && opening >= enough)
    return { outcome: 'canBeMet', ways: wished.ways, all: false, missing: [] };
  // by the needs alone, sets that differ in a back-up are alike
  const chains = problem.chains.filter((_, chain) => isNeed(chain));
  const plain = waysOf({ ...problem, chains }, noMoreWished, enough);
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
  const there = new Set(comeRound.map(({ id }) => id));
  return all
    .filter(
      (set) => !there.has(set.id) && set.contents.some((one) => one.found > 0 && helping.has(one.itemId)),
    )
    .map(({ code }) => code)
    .sort();
}

const NONE = { ways: [], all: true };

function waysOf(
  problem: CoverProblem,
  asWished: boolean,
  enough: number | null,
): { ways: WayByPlace[]; all: boolean } {
  const { ways, all } = servingWays(problem, reachable(problem), enough ?? undefined);
  return { all, ways: ways.map((way) => ({ ...way, asWished })) };
}
