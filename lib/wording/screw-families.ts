import type { Item } from '../catalogue/item';

/** What a screw family is called: the name of its screws without the length. */
export function familyWords(items: Iterable<Item>): (family: string) => string {
  const names = new Map<string, string>();
  for (const item of items) {
    if (item.kind === 'screw' && !names.has(item.screwFamily))
      names.set(item.screwFamily, item.name.replace(/\s*×\s*[\d.]+\s*mm/, ''));
  }
  return (family) => names.get(family) ?? family;
}
