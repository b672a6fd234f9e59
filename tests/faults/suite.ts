/** What a suite is asked for. */
export interface Asked {
  /** How many faults are to be tried; each suite says of what. */
  size: number;
  /** The same seed draws the same faults; how far the machine has got at that moment is its own. */
  seed: number;
  /** A demo hospital's file that is copied, never opened. */
  template: string;
  say(line: string): void;
}

/** What a suite found. */
export interface Found {
  tried: number;
  /** Writes that were acknowledged to whoever sent them; `null` where the suite sends none. */
  acknowledged: number | null;
  /** Of those, how many were not there afterwards. */
  lost: number | null;
  /** What was seen, in figures and few words. */
  seen: string[];
  /** What must not be: one sentence each. */
  faults: string[];
  /** What could not be tried on this machine, and why. It is never counted as passed. */
  notTried: string[];
}

/** One kind of fault that is done to the program. */
export interface Suite {
  /** Of what `size` is the number. */
  unit: string;
  size: number;
  run(asked: Asked): Promise<Found>;
}

/** Why a suite cannot be tried on this machine, in words. */
export class CannotTry extends Error {}
