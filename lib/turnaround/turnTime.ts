/** Of a time that varies: what it stays within half of the time, and nine times in ten. */
export interface TimeSpread {
  p50: number;
  p90: number;
}

/** How the stages of a turn vary: each by itself, or all long together (a short-handed night). */
export type StagesVary = 'independently' | 'together';

/**
 * The whole turn from its stages. The halves of the time are added. What lies between half and nine times in ten is
 * added too where the stages are long together; where each varies by itself, as the root of the sum of squares, which is
 * exact for normal distributions. Rounded up to whole units, so that no set is called ready too early.
 */
export function turnTime(stages: readonly TimeSpread[], vary: StagesVary): TimeSpread {
  const p50 = stages.reduce((sum, stage) => sum + stage.p50, 0);
  const beyond = stages.map((stage) => stage.p90 - stage.p50);
  const spread =
    vary === 'together'
      ? beyond.reduce((sum, one) => sum + one, 0)
      : Math.sqrt(beyond.reduce((sum, one) => sum + one * one, 0));
  // a root that is whole but for its last binary digit is not rounded up
  return { p50: Math.ceil(p50), p90: Math.ceil(p50 + spread - 1e-9) };
}
