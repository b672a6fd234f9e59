import type { MustHaveClass } from '../sets/configuration';
import type { TurnStep } from '../sets/setState';
import type { CountPurpose } from './closing';

/** A line below its expected number by what the set holds now. */
export interface ShortLine {
  lineId: string;
  itemId: string;
  mustHaveClass: MustHaveClass;
  expected: number;
  minimum: number;
  found: number;
  /** Items that may stand in, by the version. */
  substitutes: string[];
}

export interface OpenCount {
  countId: string;
  purpose: CountPurpose;
  personId: string;
  person: string;
  since: string;
  entries: number;
}

export interface OpenDispute {
  lineId: string;
  firstBy: string;
  first: number;
  secondBy: string;
  second: number;
}

/** How the counts of a set's present turn stand. Everything is since it was last packed. */
export interface BenchStanding {
  setId: string;
  code: string;
  step: TurnStep;
  turnId: string | null;
  versionId: string;
  lines: number;
  /** Lines somebody has counted, and lines two people have. */
  counted: number;
  checked: number;
  /** Whether a second person's blind check is asked for by the local setting. */
  checkNeeded: boolean;
  /** Who counted: none of them makes the second check. */
  countedBy: { personId: string; name: string }[];
  openCounts: OpenCount[];
  disputes: OpenDispute[];
  /** Foreign pieces whose home is not found, and pieces beyond what a line holds. */
  foreign: number;
  surplus: number;
  /** Lines with a look-alike refill that only one person stood for. */
  refillsOfOne: number;
  short: ShortLine[];
  shortByClass: Record<MustHaveClass, number>;
  /** The reader has a blind check of this set open: what the first count found is left out (no shorts, no disputes). */
  blind: boolean;
}

/** What keeps a set from being packed, whatever is short. What is short is a decision of its own. */
export type PackBar =
  | { kind: 'notOnBench'; step: TurnStep }
  | { kind: 'notCounted'; lines: number }
  | { kind: 'notChecked'; lines: number }
  | { kind: 'disputed'; lines: number }
  | { kind: 'openCount'; person: string; purpose: CountPurpose; entries: number }
  | { kind: 'foreign'; pieces: number }
  | { kind: 'surplus'; pieces: number }
  | { kind: 'refillsOfOne'; lines: number };

/** May it be packed, as far as counting goes? Every bar at once. */
export function packBars(standing: BenchStanding): PackBar[] {
  const bars: PackBar[] = [];
  const { step, lines, counted, checked } = standing;
  if (step !== 'onBench' && step !== 'shortAwaitingDecision') bars.push({ kind: 'notOnBench', step });
  if (counted < lines) bars.push({ kind: 'notCounted', lines: lines - counted });
  if (standing.checkNeeded && checked < lines && counted === lines)
    bars.push({ kind: 'notChecked', lines: lines - checked });
  if (standing.disputes.length > 0) bars.push({ kind: 'disputed', lines: standing.disputes.length });
  for (const { person, purpose, entries } of standing.openCounts)
    bars.push({ kind: 'openCount', person, purpose, entries });
  if (standing.foreign > 0) bars.push({ kind: 'foreign', pieces: standing.foreign });
  if (standing.surplus > 0) bars.push({ kind: 'surplus', pieces: standing.surplus });
  if (standing.refillsOfOne > 0) bars.push({ kind: 'refillsOfOne', lines: standing.refillsOfOne });
  return bars;
}

/** What somebody may begin on a set now. */
export function purposesOpen(
  standing: BenchStanding,
  personId: string,
): { purpose: CountPurpose; lines: number }[] {
  const counted = standing.countedBy.some((one) => one.personId === personId);
  const open: { purpose: CountPurpose; lines: number }[] = [];
  if (standing.disputes.length > 0 && standing.openCounts.length === 0)
    open.push({ purpose: 'settle', lines: new Set(standing.disputes.map(({ lineId }) => lineId)).size });
  if (standing.counted > 0 && !counted && standing.checked < standing.lines)
    open.push({ purpose: 'check', lines: standing.lines });
  open.push({ purpose: 'count', lines: standing.lines });
  return open;
}
