import type { TurnStep } from '../sets/setState';

/** The stages from theatre to the sterile store, in the order of a turn. */
export const STAGES = [
  'comingBack',
  'washing',
  'onBench',
  'packed',
  'inSteriliser',
  'awaitingAcceptance',
] as const satisfies readonly TurnStep[];
export type Stage = (typeof STAGES)[number];

/** How long a stage takes, and where that figure comes from. */
export interface StageTime {
  stage: Stage;
  minutes: number;
  /** What it stays within nine times in ten. */
  longMinutes: number;
  /** Past turns of this kind of set it is the median of; `null`: too few, so the hospital's usual time stands in. */
  fromTurns: number | null;
}

/** Fewer turns than this say too little, and the usual time is used. */
const LEAST_TURNS = 3;
/** The latest of each kind that are looked at: how it is done now, not how it was done last year. */
export const MOST_TURNS = 50;

/** The step that follows a stage when nothing goes wrong: only then did the stage take its own time. */
export const AFTER_STAGE = Object.fromEntries(
  STAGES.map((stage, at) => [stage, STAGES[at + 1] ?? 'inSterileStore']),
) as Record<Stage, TurnStep>;

/** What the hospital says of a stage until its own turns do. */
export interface UsualTime {
  minutes: number;
  /** What nine turns in ten stay within, as a share of that: 1.5 is half as long again. */
  longShare: number;
}

/** How many turns of its own weigh as much as what the hospital says about long ones: a tenth is not seen in a few. */
const PRIOR_TURNS = 10;

/**
 * How long a stage takes: the median of past turns, and what nine in ten stay within. The latter is the median times a share,
 * which is the one seen, weighed by the number of turns, and the one the hospital states, weighed as `PRIOR_TURNS`.
 */
export function stageTime(stage: Stage, pastMinutes: readonly number[], usual: UsualTime): StageTime {
  const own = pastMinutes.length >= LEAST_TURNS;
  const minutes = own ? median(pastMinutes) : usual.minutes;
  const turns = own ? pastMinutes.length : 0;
  const seen = own && minutes > 0 ? nineInTen(pastMinutes) / minutes : 1;
  const share = (turns * seen + PRIOR_TURNS * usual.longShare) / (turns + PRIOR_TURNS);
  return {
    stage,
    minutes,
    longMinutes: Math.max(minutes, Math.ceil(minutes * share - 1e-9)),
    fromTurns: own ? turns : null,
  };
}

/** The nine-in-ten point, between neighbours in proportion (Hyndman and Fan 1996, definition 7, the usual default). */
function nineInTen(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (sorted.length - 1) * 0.9;
  const below = sorted[Math.floor(at)] ?? 0;
  const above = sorted[Math.ceil(at)] ?? below;
  return below + (above - below) * (at - Math.floor(at));
}

/** The middle one; of an even number, the mean of the middle two, rounded up to a whole minute. */
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)] ?? 0;
  const lower = sorted[Math.ceil(sorted.length / 2) - 1] ?? 0;
  return Math.ceil((lower + upper) / 2);
}
