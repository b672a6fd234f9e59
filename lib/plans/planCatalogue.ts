import type { Item, Plate, Screw } from '../catalogue/item';

/** Screws alike in everything but length, in order of length; a family keeps its withdrawn pieces, marked. */
export interface ScrewFamily {
  name: string;
  screws: Screw[];
}

/** What a plan is judged against: the parts of the catalogue that it can name. */
export interface PlanCatalogue {
  /** Plates, guide wires and washers, by id. */
  items: ReadonlyMap<string, Item>;
  families: ReadonlyMap<string, ScrewFamily>;
}

/** Items a plan can name, sorted into a plan's catalogue. Other kinds are passed over. */
export function planCatalogueOf(items: readonly Item[]): PlanCatalogue {
  const byId = new Map<string, Item>();
  const screws = new Map<string, Screw[]>();
  for (const item of items) {
    if (item.kind === 'screw') {
      const family = screws.get(item.screwFamily);
      if (family) family.push(item);
      else screws.set(item.screwFamily, [item]);
    } else if (item.kind === 'plate' || item.kind === 'guideWire' || item.kind === 'washer') {
      byId.set(item.id, item);
    }
  }
  const names = [...screws.keys()].sort();
  const families = names.map(
    (name) => [name, { name, screws: (screws.get(name) ?? []).sort(byLength) }] as const,
  );
  return { items: byId, families: new Map(families) };
}

function byLength(a: Screw, b: Screw): number {
  return (a.lengthUm ?? 0) - (b.lengthUm ?? 0) || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0);
}

/** The pieces of a family that can still be had. */
export function currentScrews(family: ScrewFamily): Screw[] {
  return family.screws.filter(({ status }) => status === 'current');
}

/** Lengths a family is made in now, shortest first. */
export function madeLengthsUm(family: ScrewFamily): number[] {
  const lengths = currentScrews(family).flatMap(({ lengthUm }) => (lengthUm === null ? [] : [lengthUm]));
  return [...new Set(lengths)].sort((a, b) => a - b);
}

/** The plate a planned plate names, if the catalogue has it and it is one. */
export function plateOf(catalogue: PlanCatalogue, plateItemId: string): Plate | null {
  const item = catalogue.items.get(plateItemId);
  return item?.kind === 'plate' ? item : null;
}

/**
 * A family with what all its pieces share said once: a third of the size on the wire, and nothing lost.
 * `pieces` hold only the fields in which they differ from `base`.
 */
export interface PackedFamily {
  name: string;
  base: Screw;
  pieces: Partial<Screw>[];
}

export function packFamily(family: ScrewFamily): PackedFamily | null {
  const [base] = family.screws;
  if (!base) return null;
  const pieces = family.screws.map((screw) => differencesFrom(base, screw));
  return { name: family.name, base, pieces };
}

export function unpackFamily({ name, base, pieces }: PackedFamily): ScrewFamily {
  return { name, screws: pieces.map((piece) => ({ ...base, ...piece })) };
}

function differencesFrom(base: Screw, screw: Screw): Partial<Screw> {
  const differs = (key: string) =>
    JSON.stringify(screw[key as keyof Screw]) !== JSON.stringify(base[key as keyof Screw]);
  return Object.fromEntries(Object.entries(screw).filter(([key]) => differs(key))) as Partial<Screw>;
}
