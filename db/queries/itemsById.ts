import type { Item } from '@/lib/catalogue/item';
import type { ItemId } from '@/lib/identity/ids';

const named = new WeakMap<readonly Item[], ReadonlyMap<ItemId, Item>>();

/** The catalogue by id, once for as long as it is the same object. */
export function itemsById(catalogue: readonly Item[]): ReadonlyMap<ItemId, Item> {
  const known = named.get(catalogue) ?? new Map(catalogue.map((item) => [item.id, item]));
  named.set(catalogue, known);
  return known;
}
