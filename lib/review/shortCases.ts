import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { Construct } from '../plans/plan';
import type { ConfigurationLine } from '../sets/configuration';
import { askedFor, evidenceOf, type PastCase } from './pastCase';

/** A past case in which a whole set of a version would have lacked something. */
export interface ShortCase {
  caseId: string;
  reference: string;
  on: string;
  /** More was used than it holds. */
  ranOut: { itemId: ItemId; used: number; held: number }[];
  /** Needs of the confirmed plan that it alone would not have met. */
  unmet: string[];
}

/**
 * Past cases in which a whole set of these lines would have run short: more pieces used than it holds, or a need of the confirmed
 * plan that its pieces do not meet. What single packs brought to the case is not counted in: this is about the set alone.
 *
 * @param unmetBy names of the needs of a construct that these lines alone do not meet
 */
export function shortCases(
  lines: readonly Pick<ConfigurationLine, 'itemId' | 'expected'>[],
  cases: readonly PastCase[],
  unmetBy: (construct: Construct) => ReadonlyMap<string, string>,
): ShortCase[] {
  const held = new Map<ItemId, number>();
  for (const { itemId, expected } of lines) held.set(itemId, (held.get(itemId) ?? 0) + expected);
  return cases.flatMap((one): ShortCase[] => {
    const ranOut = [...(one.used ?? [])].flatMap(([itemId, used]) => {
      const there = held.get(itemId) ?? 0;
      return used > there ? [{ itemId, used, held: there }] : [];
    });
    const unmet = one.construct === null ? [] : [...unmetBy(one.construct).values()];
    return ranOut.length + unmet.length === 0
      ? []
      : [{ caseId: one.caseId, reference: one.reference, on: one.on, ranOut, unmet }];
  });
}

/** What a version would lack in past cases that the one in force would not. */
export function newlyShort(before: readonly ShortCase[], after: readonly ShortCase[]): ShortCase[] {
  const was = new Map(before.map((one) => [one.caseId, one]));
  return after.flatMap((one): ShortCase[] => {
    const old = was.get(one.caseId);
    if (!old) return [one];
    const ranOut = one.ranOut.filter(
      ({ itemId, held }) => !old.ranOut.some((had) => had.itemId === itemId && had.held <= held),
    );
    const unmet = one.unmet.filter((need) => !old.unmet.includes(need));
    return ranOut.length + unmet.length === 0 ? [] : [{ ...one, ranOut, unmet }];
  });
}

/** An item that an earlier version held and the one in force does not. */
export interface Removed {
  itemId: ItemId;
  /** The first version in force without it, and from when. */
  version: number;
  since: string;
}

/** What earlier versions held and the one in force holds no longer, with the version that took it out. */
export function removedItems(
  versions: readonly { version: number; from: string | null; items: ReadonlySet<ItemId> }[],
): Removed[] {
  const order = [...versions].sort((a, b) => a.version - b.version);
  const now = order.at(-1);
  if (!now) return [];
  const found = new Map<ItemId, Removed>();
  for (const [at, version] of order.entries()) {
    const next = order[at + 1];
    if (!next) break;
    for (const itemId of version.items) {
      if (next.items.has(itemId) || now.items.has(itemId) || next.from === null) continue;
      found.set(itemId, { itemId, version: next.version, since: next.from });
    }
  }
  return [...found.values()];
}

/** Cases since a removal, and those in which the item was asked for all the same. */
export function askedSince(
  { itemId, since }: Removed,
  item: Item | undefined,
  cases: readonly PastCase[],
): { cases: number; asked: { caseId: string; reference: string; on: string }[] } | null {
  const how = item ? evidenceOf(item) : 'none';
  if (how === 'none') return null;
  const known = cases.filter((one) => one.on >= since && askedFor(one, itemId, how) !== null);
  const asked = known.filter((one) => (askedFor(one, itemId, how) ?? 0) > 0);
  return {
    cases: known.length,
    asked: asked.map(({ caseId, reference, on }) => ({ caseId, reference, on })),
  };
}
