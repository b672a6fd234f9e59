/** A heap of things that are told apart no further: a set, or packs of one item and lot. */
export interface Heap {
  /** `set_…`, or item and lot. */
  key: string;
  quantity: number;
}

/** What tells things apart when a kit is scanned again: whichever shelf a pack of a lot came from, it is the same thing. */
export const heapKey = (thing: { setId: string } | { itemId: string; lot: string | null }): string =>
  'setId' in thing ? thing.setId : `${thing.itemId} lot ${thing.lot ?? ''}`;

/** Where two people's pieces differ: nothing is said of what both had. */
export interface KitDifference {
  key: string;
  /** By the one who picked. */
  picked: number;
  /** By the one who checked. */
  seen: number;
}

/** Compares what was picked with what was seen, piece by piece; in the order of the keys, so that it is told alike to all. */
export function differencesOfCheck(picked: readonly Heap[], seen: readonly Heap[]): KitDifference[] {
  const [first, second] = [sumOf(picked), sumOf(seen)];
  return [...new Set([...first.keys(), ...second.keys()])]
    .sort()
    .map((key) => ({ key, picked: first.get(key) ?? 0, seen: second.get(key) ?? 0 }))
    .filter((one) => one.picked !== one.seen);
}

function sumOf(heaps: readonly Heap[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const { key, quantity } of heaps) sums.set(key, (sums.get(key) ?? 0) + quantity);
  return sums;
}
