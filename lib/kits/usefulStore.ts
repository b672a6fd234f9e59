import type { ItemId } from '../identity/ids';
import type { Needs } from './need';
import type { Store, StoredSet } from './store';

const itemsOf = new WeakMap<Needs, ReadonlySet<ItemId>>();

/** Every item that could meet any of these needs, those that are not established or refused among them. */
function itemsAskedFor(needs: Needs): ReadonlySet<ItemId> {
  const known = itemsOf.get(needs);
  if (known) return known;
  const items = new Set<ItemId>();
  for (const { accepts, notEstablished, refused } of needs.pieces)
    for (const { itemId } of [...accepts, ...notEstablished, ...refused]) items.add(itemId);
  for (const { slots } of needs.chains)
    for (const { candidates } of slots) for (const { itemId } of candidates) if (itemId) items.add(itemId);
  itemsOf.set(needs, items);
  return items;
}

const holding = new WeakMap<Needs, WeakMap<StoredSet['contents'], boolean>>();

/**
 * The part of a store that the kit for these needs can rest on: sets that hold anything asked for, and packs of it. Sets that hold
 * nothing of it are opened for nobody, held against nothing and named nowhere, so a kit from this part is the kit from all of it;
 * tests compare the two.
 */
export function usefulStore(needs: Needs, store: Store): Store {
  const items = itemsAskedFor(needs);
  // sets that hold the same often share one list of it, over many stores: it is gone through once
  const known = holding.get(needs) ?? new WeakMap<StoredSet['contents'], boolean>();
  holding.set(needs, known);
  const holdsAny = (contents: StoredSet['contents']): boolean => {
    const before = known.get(contents);
    if (before !== undefined) return before;
    const any = contents.some(({ itemId, found }) => found > 0 && items.has(itemId));
    known.set(contents, any);
    return any;
  };
  return {
    sets: store.sets.filter(({ contents }) => holdsAny(contents)),
    packs: store.packs.filter(({ itemId }) => items.has(itemId)),
  };
}
