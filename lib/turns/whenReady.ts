import type { TurnStep } from '../sets/setState';
import { STAGES, type Stage, type StageTime } from './stageTimes';

/** A set as far as it matters for when it can be in the sterile store. */
export interface SetOnItsWay {
  configurationId: string;
  step: TurnStep;
  /** When its present step began. */
  since: string;
  /** The end of the case it is in theatre for; `null` where that is not known. */
  caseEndsAt: string | null;
  /** Whether it was counted since it came to the bench. */
  counted: boolean;
}

/** Minutes of the stages to come: the present one first, by what is left of it. */
export interface WayLeft {
  /** Until the first stage can begin: the rest of the case. */
  waitMinutes: number;
  stages: { minutes: number; longMinutes: number }[];
}

/**
 * What lies between a set and the sterile store; `null` where nobody can say, because it waits for a decision or for a case of
 * which the end is not known.
 */
export function wayLeft(
  set: SetOnItsWay,
  now: string,
  timeOf: (configurationId: string, stage: Stage) => StageTime,
): WayLeft | null {
  const times = (from: number) => STAGES.slice(from).map((stage) => timeOf(set.configurationId, stage));
  switch (set.step) {
    case 'inSterileStore':
      return { waitMinutes: 0, stages: [] };
    case 'inTheatre':
      if (set.caseEndsAt === null) return null;
      return { waitMinutes: minutesFrom(now, set.caseEndsAt), stages: times(0) };
    case 'held':
    case 'shortAwaitingDecision':
      return null;
    default: {
      const at = STAGES.indexOf(set.step);
      const [present, ...rest] = times(at);
      // not counted: the work at the bench is still to be begun, however long the set has lain there
      const spent = set.step === 'onBench' && !set.counted ? 0 : minutesFrom(set.since, now);
      if (!present) return { waitMinutes: 0, stages: rest };
      return { waitMinutes: 0, stages: [leftOf(present, spent), ...rest] };
    }
  }
}

/** Of a stage that has run for a while: what is left, if it takes as long as usual, or as long as nine in ten do. */
const leftOf = ({ minutes, longMinutes }: StageTime, spent: number) => ({
  minutes: Math.max(0, minutes - spent),
  longMinutes: Math.max(0, longMinutes - spent),
});

const minutesFrom = (from: string, to: string) =>
  Math.max(0, Math.ceil((Date.parse(to) - Date.parse(from)) / 60_000));
