import type { HeldBecause, TurnStep } from '../sets/setState';

/** Where a set may go from each step. The database keeps the same table and refuses anything else. */
export const NEXT_STEPS: Readonly<Record<TurnStep, readonly TurnStep[]>> = {
  inTheatre: ['comingBack', 'inSterileStore', 'held'],
  comingBack: ['washing', 'held'],
  washing: ['onBench', 'held'],
  onBench: ['washing', 'shortAwaitingDecision', 'packed', 'held'],
  shortAwaitingDecision: ['onBench', 'packed', 'held'],
  packed: ['inSteriliser', 'onBench', 'held'],
  inSteriliser: ['awaitingAcceptance', 'held'],
  awaitingAcceptance: ['inSterileStore', 'onBench', 'held'],
  inSterileStore: ['inTheatre', 'onBench', 'held'],
  held: ['comingBack', 'washing', 'onBench', 'packed', 'awaitingAcceptance', 'inSterileStore'],
};

export function mayFollow(from: TurnStep, to: TurnStep): boolean {
  return NEXT_STEPS[from].includes(to);
}

/** Steps in which the wrap is closed. */
export const SEALED_STEPS: ReadonlySet<TurnStep> = new Set([
  'packed',
  'inSteriliser',
  'awaitingAcceptance',
  'inSterileStore',
]);

/** Steps after use and before the sterile store. A set that enters one of them from outside begins a new turn. */
const IN_WORK: ReadonlySet<TurnStep> = new Set(['comingBack', 'washing', 'onBench']);
const ROUND_DONE: ReadonlySet<TurnStep> = new Set(['inTheatre', 'inSterileStore']);

/** Whether going from one step to another begins a new turn. A held set is judged by the step it was held from. */
export function beginsTurn(from: TurnStep, to: TurnStep, heldFrom: TurnStep | null): boolean {
  return IN_WORK.has(to) && ROUND_DONE.has(from === 'held' && heldFrom !== null ? heldFrom : from);
}

/**
 * Where a lifted hold may let a set go: what made it unfit must be undone first. A set held only because something is
 * not known (a recall, a load) may go back to where it was once it is known.
 */
const AFTER_HOLD: Readonly<Record<HeldBecause, readonly TurnStep[] | 'whereItWas'>> = {
  dirtyAfterWash: ['washing'],
  wrapWetTornOrUnsealed: ['washing', 'onBench'],
  indicatorOrCycleFailed: ['washing', 'onBench'],
  loadUnknown: 'whereItWas',
  recall: 'whereItWas',
  wrongLabel: ['onBench'],
  disputedCount: ['onBench'],
  loanWithoutDeclaration: ['washing'],
  mustHaveDamaged: ['washing', 'onBench'],
};

/** Reprocessing (washing) is open after every hold. */
function stepsAfterHold(because: HeldBecause, heldFrom: TurnStep | null): TurnStep[] {
  const after = AFTER_HOLD[because];
  const named = after === 'whereItWas' ? (heldFrom === null ? [] : [heldFrom]) : after;
  const reached = named.filter((step) => mayFollow('held', step));
  return [...new Set<TurnStep>([...reached, 'washing'])];
}

/** Where a set held for several reasons may go: only where each of them lets it. */
export function stepsAfterHolds(becauses: readonly HeldBecause[], heldFrom: TurnStep | null): TurnStep[] {
  const [first, ...others] = becauses.map((because) => stepsAfterHold(because, heldFrom));
  return (first ?? ['washing']).filter((step) => others.every((steps) => steps.includes(step)));
}

/** Steps from which a set may be taken out of service: nobody waits for it elsewhere. */
export const WITHDRAWABLE_STEPS: ReadonlySet<TurnStep> = new Set([
  'comingBack',
  'washing',
  'onBench',
  'shortAwaitingDecision',
  'inSterileStore',
  'held',
]);
