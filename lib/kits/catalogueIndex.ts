import type { Item, ItemKind, ItemOf, Screw } from '../catalogue/item';
import type { ItemId } from '../identity/ids';

/** The catalogue as the kit looks at it: by id, by kind, by screw family. */
export interface CatalogueIndex {
  byId: Map<ItemId, Item>;
  /** Current items only: what is withdrawn or recalled is never part of a kit. */
  current<K extends ItemKind>(kind: K): ItemOf<K>[];
  /** Current screws of a family with a stated length, shortest first. */
  family(name: string): Screw[];
  /** Whether the catalogue knows the family at all, in whatever status. */
  knowsFamily(name: string): boolean;
}

const kept = new WeakMap<readonly Item[], CatalogueIndex>();

/** Indexes a catalogue once; the same array gives the same index. */
export function indexCatalogue(catalogue: readonly Item[]): CatalogueIndex {
  const known = kept.get(catalogue);
  if (known) return known;
  const made = makeIndex(catalogue);
  kept.set(catalogue, made);
  return made;
}

function makeIndex(catalogue: readonly Item[]): CatalogueIndex {
  const byKind = new Map<ItemKind, Item[]>();
  const families = new Map<string, Screw[]>();
  for (const item of catalogue) {
    if (item.kind === 'screw' && !families.has(item.screwFamily)) families.set(item.screwFamily, []);
    if (item.status !== 'current') continue;
    const alike = byKind.get(item.kind);
    if (alike) alike.push(item);
    else byKind.set(item.kind, [item]);
    if (item.kind === 'screw' && item.lengthUm !== null) families.get(item.screwFamily)?.push(item);
  }
  for (const screws of families.values()) {
    screws.sort((a, b) => (a.lengthUm ?? 0) - (b.lengthUm ?? 0) || (a.code < b.code ? -1 : 1));
  }
  return {
    byId: new Map(catalogue.map((item) => [item.id, item])),
    current: <K extends ItemKind>(kind: K) => (byKind.get(kind) ?? []) as ItemOf<K>[],
    family: (name) => families.get(name) ?? [],
    knowsFamily: (name) => families.has(name),
  };
}
