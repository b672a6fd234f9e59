import type { ItemId } from '../identity/ids';
import type { StoredSet } from './store';

/** By item, the places of the sets that hold it, and how many each holds. */
export type HeldBy = ReadonlyMap<ItemId, readonly (readonly [place: number, found: number])[]>;

/** Looked up once for sets that many plans are asked about. */
export function heldByItem(sets: readonly Pick<StoredSet, 'contents'>[]): HeldBy {
  const heldBy = new Map<ItemId, [number, number][]>();
  sets.forEach(({ contents }, place) => {
    for (const { itemId, found } of contents) {
      if (found <= 0) continue;
      const places = heldBy.get(itemId);
      if (places) places.push([place, found]);
      else heldBy.set(itemId, [[place, found]]);
    }
  });
  return heldBy;
}

/**
 * What each of the sets holds of the numbered items, by item number. Goes through what the plan looks at, not through all that
 * lies in the sets.
 *
 * @param sets how many sets there are
 */
export function heldAmong(
  sets: number,
  numberOf: ReadonlyMap<ItemId, number>,
  heldBy: HeldBy,
  current: (id: ItemId) => boolean,
): Map<number, number>[] {
  const holds = Array.from({ length: sets }, () => new Map<number, number>());
  for (const [itemId, item] of numberOf) {
    if (!current(itemId)) continue;
    for (const [place, found] of heldBy.get(itemId) ?? []) {
      const held = holds[place] as Map<number, number>;
      held.set(item, (held.get(item) ?? 0) + found);
    }
  }
  return holds;
}
