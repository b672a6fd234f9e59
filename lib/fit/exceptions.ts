import type { Item } from '../catalogue/item';
import type { FitException } from './rule';

/**
 * One exception for every pair of members of the screw families its two items belong to: a length is not another
 * design. `families` gives, for a screw's id, all screws of its family; an item that is not in it stands for itself.
 */
export function overFamilies(
  exception: FitException,
  families: ReadonlyMap<string, readonly string[]>,
): FitException[] {
  const first = families.get(exception.firstItemId) ?? [exception.firstItemId];
  const second = families.get(exception.secondItemId) ?? [exception.secondItemId];
  return first.flatMap((a) =>
    second.map((b) => ({ ...exception, firstItemId: a, secondItemId: b }) as FitException),
  );
}

/** For each screw of a catalogue: the ids of all screws of its family. */
export function screwFamiliesOf(catalogue: readonly Item[]): Map<string, string[]> {
  const families = new Map<string, string[]>();
  for (const item of catalogue) {
    if (item.kind === 'screw')
      families.set(item.screwFamily, [...(families.get(item.screwFamily) ?? []), item.id]);
  }
  return new Map([...families.values()].flatMap((ids) => ids.map((id) => [id, ids] as const)));
}
