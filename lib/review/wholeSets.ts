import type { ItemId, SetId } from '../identity/ids';
import type { ConfigurationLine } from '../sets/configuration';
import type { PastCase } from './pastCase';

/** How one set fared. */
export interface SetUse {
  setId: SetId;
  code: string;
  cases: number;
  lastOn: string | null;
  /** It was there, what was used is recorded and planned, and nothing of it was used or could have served. */
  unused: number;
}

/** Each set with the cases it was in and those in which nothing of it was used. */
export function setUses(
  sets: readonly { id: SetId; code: string }[],
  cases: readonly PastCase[],
  held: ReadonlySet<ItemId>,
): SetUse[] {
  return sets.map(({ id, code }) => {
    const its = cases.filter(({ setIds }) => setIds.includes(id));
    const unused = its.filter(
      ({ used, usedSets, couldServe }) =>
        used !== null &&
        !usedSets.has(id) &&
        couldServe !== null &&
        ![...couldServe].some((item) => held.has(item)),
    );
    const lastOn = its.reduce<string | null>(
      (last, { on }) => (last === null || on > last ? on : last),
      null,
    );
    return { setId: id, code, cases: its.length, lastOn, unused: unused.length };
  });
}

type Held = readonly Pick<ConfigurationLine, 'itemId' | 'expected'>[];

/** Two configurations laid on top of one another. */
export interface Overlap {
  /** Pieces both hold, and those one would hold that serves both. */
  shared: number;
  merged: number;
  /** `shared ÷ merged`: 1 where both hold the same. */
  share: number;
  /** Pieces only the one holds, and only the other. */
  onlyFirst: number;
  onlySecond: number;
}

/** How alike two configurations are, piece by piece (weighted Jaccard index). */
export function overlapOf(first: Held, second: Held): Overlap {
  const [a, b] = [piecesOf(first), piecesOf(second)];
  let [shared, merged, onlyFirst, onlySecond] = [0, 0, 0, 0];
  for (const itemId of new Set([...a.keys(), ...b.keys()])) {
    const [one, other] = [a.get(itemId) ?? 0, b.get(itemId) ?? 0];
    shared += Math.min(one, other);
    merged += Math.max(one, other);
    onlyFirst += Math.max(0, one - other);
    onlySecond += Math.max(0, other - one);
  }
  return { shared, merged, share: merged === 0 ? 0 : shared / merged, onlyFirst, onlySecond };
}

function piecesOf(lines: Held): Map<ItemId, number> {
  const pieces = new Map<ItemId, number>();
  for (const { itemId, expected } of lines) pieces.set(itemId, (pieces.get(itemId) ?? 0) + expected);
  return pieces;
}
