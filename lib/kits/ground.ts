import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { Construct } from '../plans/plan';
import type { Sources } from './allocate';
import type { Rules } from './askOnce';
import type { Availability } from './availability';
import type { CatalogueIndex } from './catalogueIndex';
import type { Completed } from './cover/packs';
import { type AtHand, addPacks, addSet, atHandOf, type CoverSet, nothingAtHand } from './cover/problem';
import type { Solved } from './cover/solve';
import type { StoreProblem } from './coverOfStore';
import type { SourceRef } from './kit';
import type { Needs } from './need';

/** All that the parts of the answer are worked out from, once the kit itself is chosen. */
export interface Ground {
  construct: Construct;
  catalogue: readonly Item[];
  index: CatalogueIndex;
  rules: Rules;
  needs: Needs;
  available: Availability;
  store: StoreProblem;
  solved: Solved;
  chosen: Completed;
  /** Pieces by item in the chosen sets and packs. */
  atHand: AtHand;
  /** Where each item of the chosen kit is, opened trays first. */
  sources: Sources;
}

export function groundOf(given: Omit<Ground, 'chosen' | 'atHand' | 'sources'>): Ground {
  const { store, solved } = given;
  const chosen = solved.best;
  return { ...given, chosen, atHand: atHandOf(store.problem, chosen), sources: sourcesOf(store, chosen) };
}

/** Everything in reach: all available sets and packs. */
export function everythingAtHand({ problem }: StoreProblem): AtHand {
  const all = nothingAtHand(problem);
  addPacks(all, problem);
  for (const set of problem.sets) addSet(all, set);
  return all;
}

/** The chosen trays but one, with every pack of the store. */
export function withoutSet({ problem }: StoreProblem, chosen: Completed, left: number): AtHand {
  const rest = nothingAtHand(problem);
  addPacks(rest, problem);
  for (const set of chosen.sets) if (set !== left) addSet(rest, problem.sets[set] as CoverSet);
  return rest;
}

function sourcesOf(store: StoreProblem, chosen: Completed): Sources {
  const sources: Sources = new Map();
  const put = (itemId: ItemId, from: SourceRef) =>
    sources.set(itemId, [...(sources.get(itemId) ?? []), from]);
  for (const set of chosen.sets) {
    const { id } = store.sets[set] as StoreProblem['sets'][number];
    for (const item of store.problem.sets[set]?.holds.keys() ?? []) {
      put(store.items[item] as ItemId, { kind: 'set', setId: id });
    }
  }
  chosen.packs.forEach((quantity, pack) => {
    const { id, itemId } = store.packs[pack] as StoreProblem['packs'][number];
    if (quantity > 0) put(itemId, { kind: 'pack', stockId: id });
  });
  return sources;
}
