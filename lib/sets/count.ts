import type { TurnStep } from './setState';

/** Steps in which a set is open, so that its pieces can be counted. A sealed set is never counted. */
const OPEN_STEPS: ReadonlySet<TurnStep> = new Set([
  'inTheatre',
  'comingBack',
  'washing',
  'onBench',
  'shortAwaitingDecision',
  'held',
]);

export function canBeCounted(step: TurnStep): boolean {
  return OPEN_STEPS.has(step);
}
