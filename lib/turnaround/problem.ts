import type { TimeSpread } from './turnTime';

/**
 * Who gets which set, as numbers alone: cases, sets and pouches by their place in these lists, instants in whole
 * milliseconds. Every stretch of time is half open: what ends at an instant does not meet what begins at it.
 */
export interface TurnaroundProblem {
  cases: readonly PlannedCase[];
  sets: readonly PlannedSet[];
  /** How many there are of each pouch; each is used up by the case it goes to. */
  pouches: readonly number[];
  promises: readonly SetPromise[];
  rule: PlanningRule;
}

export interface PlannedCase {
  /** When its sets must stand in theatre: its start less the lead. */
  needMs: number;
  startMs: number;
  endMs: number;
  /** Urgency: 0 is served before all others. */
  rank: number;
  theatre: string | null;
  /** Any one of these serves the case. */
  ways: readonly Way[];
}

/** One way to serve a case, all of it or nothing. */
export interface Way {
  /** For each part one set out of these, no set twice. */
  parts: readonly (readonly number[])[];
  /** Pouches that go with them, one piece each. */
  pouches: readonly number[];
  /** What makes it less welcome than another; compared last. */
  penalty: number;
}

export interface PlannedSet {
  /** When it can first be taken; `null`: nobody can say, and it is promised to nobody. */
  readyMs: TimeSpread | null;
  /** From the end of a case until it stands in the sterile store again. */
  turnMs: TimeSpread;
}

/** That a set was promised to a case before this plan was made. */
export interface SetPromise {
  case: number;
  set: number;
  /** How much it matters to keep it, beside other promises. */
  moveCost: number;
  /** Kept before any case is served by its set. */
  fixed: boolean;
}

export interface PlanningRule {
  /** Which time a set must make: the one it makes half of the time, or nine times in ten. */
  planBy: 'p50' | 'p90';
  /** A case has a risk where its set is ready, nine times in ten, less than this before it is needed. */
  wantedMarginMs: number;
}

/** When a set can first be taken, by the rule; never, where nobody can say. */
export function readyOf({ sets, rule }: TurnaroundProblem, set: number): number {
  return sets[set]?.readyMs?.[rule.planBy] ?? Number.POSITIVE_INFINITY;
}

/** The same without any risk: nine times in ten, and the wanted margin besides. */
export function firmReadyOf({ sets, rule }: TurnaroundProblem, set: number): number {
  return (sets[set]?.readyMs?.p90 ?? Number.POSITIVE_INFINITY) + rule.wantedMarginMs;
}

/** When a set that served the case can be taken again, by the rule. */
export function backOf(problem: TurnaroundProblem, one: number, set: number): number {
  return endOf(problem, one) + turnOf(problem, set)[problem.rule.planBy];
}

/** The same without any risk. */
export function firmBackOf(problem: TurnaroundProblem, one: number, set: number): number {
  return endOf(problem, one) + turnOf(problem, set).p90 + problem.rule.wantedMarginMs;
}

export function needOf({ cases }: TurnaroundProblem, one: number): number {
  return (cases[one] as PlannedCase).needMs;
}

export function waysOf({ cases }: TurnaroundProblem, one: number): readonly Way[] {
  return (cases[one] as PlannedCase).ways;
}

/** The sets of a part that are ready in time for the case, whatever else they are wanted for. */
export function inTime(problem: TurnaroundProblem, one: number, part: readonly number[]): number[] {
  return part.filter((set) => readyOf(problem, set) <= needOf(problem, one));
}

const endOf = ({ cases }: TurnaroundProblem, one: number) => (cases[one] as PlannedCase).endMs;
const turnOf = ({ sets }: TurnaroundProblem, set: number) => (sets[set] as PlannedSet).turnMs;
