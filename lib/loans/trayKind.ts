import type { MustHaveClass } from '../sets/configuration';

/** A known line of a tray: what the bench will count. */
interface TrayLine {
  itemId: string | null;
  quantity: number;
  mustHaveClass: number | null;
}

export interface KnownLine {
  itemId: string;
  quantity: number;
  mustHaveClass: MustHaveClass;
}

/**
 * What a tray holds of the catalogue, one line an item. A must-have class nobody states is 1, the strictest: what is
 * not known to be dispensable stops its step when it is short.
 */
export function knownLines(lines: readonly TrayLine[]): KnownLine[] {
  const found = new Map<string, KnownLine>();
  for (const { itemId, quantity, mustHaveClass } of lines) {
    if (itemId === null) continue;
    const before = found.get(itemId);
    const stated = (mustHaveClass ?? 1) as MustHaveClass;
    found.set(itemId, {
      itemId,
      quantity: quantity + (before?.quantity ?? 0),
      mustHaveClass: before && before.mustHaveClass < stated ? before.mustHaveClass : stated,
    });
  }
  return [...found.values()];
}

/** Whether a tray is just what a version of ours holds: every item, as many, and nothing unknown. */
export function isJust(
  tray: readonly TrayLine[],
  version: readonly { itemId: string; expected: number }[],
): boolean {
  if (tray.some(({ itemId }) => itemId === null)) return false;
  const sums = (rows: readonly { itemId: string; pieces: number }[]) => {
    const all = new Map<string, number>();
    for (const { itemId, pieces } of rows) all.set(itemId, (all.get(itemId) ?? 0) + pieces);
    return all;
  };
  const listed = sums(tray.map(({ itemId, quantity }) => ({ itemId: itemId ?? '', pieces: quantity })));
  const held = sums(version.map(({ itemId, expected }) => ({ itemId, pieces: expected })));
  return listed.size === held.size && [...listed].every(([itemId, pieces]) => held.get(itemId) === pieces);
}

/** What stands on the ownership tag of a tray, and is the code of the set it becomes: `LN-0012-A`. */
export const tagOf = (number: string, tray: number): string => `${number}-${letterOf(tray)}`;

/** The code of the kind that is made for a tray of its own: `LN0012A`. */
export const kindCodeOf = (number: string, tray: number): string =>
  `${number.replace('-', '')}${letterOf(tray)}`;

const letterOf = (tray: number): string => String.fromCharCode(64 + tray);
