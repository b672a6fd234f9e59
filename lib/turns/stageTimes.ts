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

export function stageTime(stage: Stage, pastMinutes: readonly number[], usualMinutes: number): StageTime {
  if (pastMinutes.length < LEAST_TURNS) return { stage, minutes: usualMinutes, fromTurns: null };
  return { stage, minutes: median(pastMinutes), fromTurns: pastMinutes.length };
}

/** The middle one; of an even number, the mean of the middle two, rounded up to a whole minute. */
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)] ?? 0;
  const lower = sorted[Math.ceil(sorted.length / 2) - 1] ?? 0;
  return Math.ceil((lower + upper) / 2);
}
