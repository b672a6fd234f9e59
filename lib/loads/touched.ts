import { biologicalPassed, type IndicatorFacts } from './acceptance';
import type { LoadState } from './load';

/** What failed: where it is the biological result, only a passed biological result speaks for another load. */
export type FailureOf = 'biological' | 'other';

export interface LoadInLine {
  id: string;
  number: string;
  state: LoadState;
  /** ISO instant; loads that never started are not in line. */
  startedAt: string;
  indicators: readonly Pick<IndicatorFacts, 'kind' | 'result'>[];
  /** Set out before its biological result. */
  byException: boolean;
}

export interface Touched {
  /** The last load before the failed one that was accepted; `null` where there is none on record. */
  since: LoadInLine | null;
  /** The first accepted one after it, where the line of doubt ends; `null` where it reaches to now. */
  until: LoadInLine | null;
  /** The failed load and all others in doubt, oldest first. */
  loads: LoadInLine[];
}

/**
 * Everything since the last accepted load on a steriliser: what lies between the accepted load before the failed one and
 * the accepted load after it, as nothing speaks for the machine in between.
 *
 * One set out by exception speaks for nothing until its biological result is known. After a failed biological result an
 * acceptance without one says nothing either, so the line goes back to the last passed one (CDC, Guideline for
 * Disinfection and Sterilization in Healthcare Facilities, 2008, from memory: recall to the last negative spore test).
 */
export function touchedBy(all: readonly LoadInLine[], failedId: string, failure: FailureOf): Touched {
  const line = [...all].sort(
    (a, b) => a.startedAt.localeCompare(b.startedAt) || a.number.localeCompare(b.number),
  );
  const at = line.findIndex(({ id }) => id === failedId);
  if (at < 0) throw new Error(`the failed load ${failedId} is not on this steriliser`);
  const speaks = (load: LoadInLine) => speaksForSteriliser(load, failure);
  const before = line.slice(0, at).findLastIndex(speaks);
  const after = line.findIndex((load, place) => place > at && speaks(load));
  return {
    since: line[before] ?? null,
    until: line[after] ?? null,
    loads: line.slice(before + 1, after < 0 ? undefined : after),
  };
}

/** Whether a load speaks for its steriliser, as against a failure of that kind. */
export function speaksForSteriliser(
  { state, indicators, byException }: LoadInLine,
  failure: FailureOf,
): boolean {
  if (state !== 'accepted' || indicators.some(({ result }) => result === 'failed')) return false;
  return failure === 'biological' || byException ? biologicalPassed(indicators) : true;
}

/** Where a pack of a load in doubt is now. */
export type PackFate =
  /** Here and closed: to be held. */
  | 'here'
  | 'heldAlready'
  /** It went to theatre, or was taken from the shelf. */
  | 'used'
  /** Opened here again, washed or packed anew: nothing of it is on the shelf. */
  | 'openedHere'
  | 'notEstablished';

export interface TouchedPack {
  packId: string;
  loadId: string;
  name: string;
  fate: PackFate;
}

export interface TouchedCount {
  packs: number;
  toHold: number;
  used: number;
  openedHere: number;
  notEstablished: number;
}

export function countTouched(packs: readonly Pick<TouchedPack, 'fate'>[]): TouchedCount {
  const of = (...fates: PackFate[]) => packs.filter(({ fate }) => fates.includes(fate)).length;
  return {
    packs: packs.length,
    toHold: of('here', 'heldAlready'),
    used: of('used'),
    openedHere: of('openedHere'),
    notEstablished: of('notEstablished'),
  };
}
