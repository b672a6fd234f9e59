import type { TimeSpread } from '../turnaround/turnTime';
import { type Stage, stageTime } from './stageTimes';

/** How long a stage takes half of the time and nine times in ten, and where the figures come from. */
export interface StageSpread extends TimeSpread {
  stage: Stage;
  /** Past turns of this kind of set that both figures are of; `null`: at least one is the hospital's usual time. */
  fromTurns: number | null;
}

/** With fewer turns, no time seen holds nine times in ten: of 8, even the longest holds for the next only 8 in 9 times. */
const LEAST_FOR_NINE_IN_TEN = 9;

/**
 * The spread of a stage from its own turns, over a stated usual spread. The next turn is as likely to come anywhere among
 * the past ones, so that the k-th shortest of n holds for it with chance k ÷ (n + 1), whatever the distribution: nine times
 * in ten needs k ≥ 0.9 (n + 1) (order statistics; common in any textbook of non-parametric statistics). Until there are
 * enough, it is the usual spread or the longest time seen, whichever is longer.
 */
export function stageSpread(stage: Stage, pastMinutes: readonly number[], usual: TimeSpread): StageSpread {
  const { minutes: p50, fromTurns } = stageTime(stage, pastMinutes, usual.p50);
  const sorted = [...pastMinutes].sort((a, b) => a - b);
  const turns = sorted.length;
  if (turns < LEAST_FOR_NINE_IN_TEN) {
    const longest = sorted[turns - 1] ?? 0;
    return { stage, p50, p90: Math.max(p50, usual.p90, Math.ceil(longest)), fromTurns: null };
  }
  const rank = Math.ceil(0.9 * (turns + 1) - 1e-9);
  return { stage, p50, p90: Math.max(p50, Math.ceil(sorted[rank - 1] as number)), fromTurns };
}
