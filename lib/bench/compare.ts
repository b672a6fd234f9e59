import type { CountState } from './state';

/** What a line held when a count was closed, and whose count in this turn said so; `null` when nobody's did. */
export interface HeldBefore {
  found: number;
  countedBy: string | null;
  countId: string | null;
}

/** A line on which two people disagree. Both figures stay on record whatever is settled later. */
export interface Difference {
  lineId: string;
  firstCountId: string;
  /** Pieces the line should have held by the first count and what was moved since. */
  first: number;
  /** Pieces that lay there by the second. */
  second: number;
}

/**
 * Lines on which a count differs from what another person's count of the same turn left there. What is compared is the
 * pieces lying there, fit or not, before this counter moved any: a piece the second one finds blunt is no disagreement
 * about how many there are. A line only one person has counted is compared with nothing.
 */
export function differencesOf(
  state: CountState,
  held: ReadonlyMap<string, HeldBefore>,
  personId: string,
): Difference[] {
  return [...state.lines].flatMap(([lineId, line]): Difference[] => {
    const before = held.get(lineId);
    if (line.there === null || !before?.countedBy || before.countId === null) return [];
    if (before.countedBy === personId || before.found === line.there) return [];
    return [{ lineId, firstCountId: before.countId, first: before.found, second: line.there }];
  });
}
