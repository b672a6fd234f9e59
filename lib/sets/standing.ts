import type { Answer } from '../calculations/calculation';
import {
  type CompletenessInput,
  type CompletenessOutput,
  completeness,
} from '../calculations/completeness/completeness';
import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { Construct } from '../plans/plan';
import {
  type BuildableNow,
  buildableNow,
  type FitGround,
  type Pieces,
  type StoppedPurpose,
} from './buildable';
import { completenessInputOf, type HeldLine, type SetSettings } from './holdings';

/** A set as it is judged: what it should hold, what was counted, and what it is for. */
export interface JudgedSet {
  lines: readonly HeldLine[];
  /** Basket and container, for the mass. */
  boxes: readonly (ItemId | null)[];
  foreign: readonly { quantity: number }[];
  promises: readonly { name: string; construct: Construct }[];
  /** Booked cases this set is promised to, each with its stated plan and what else will be there for it. */
  cases: readonly JudgedCase[];
}

export interface JudgedCase {
  caseId: string;
  reference: string;
  startsAt: string;
  construct: Construct;
  /** Other sets promised to the case, and sets of other configurations in the sterile store. */
  beside: readonly Pieces[];
  /** Single packs in store that are in date on the day of the case. */
  packs: ReadonlyMap<ItemId, number>;
}

/** What the shortage of a set stops: a booked case's plan, or a construct its configuration promises. */
export type Stop = { stopped: StoppedPurpose[]; shortItems: ItemId[] } & (
  | { kind: 'case'; caseId: string; reference: string; startsAt: string }
  | { kind: 'construct'; name: string }
);

export interface PromiseStanding extends BuildableNow {
  name: string;
}

export interface CaseStanding extends BuildableNow {
  caseId: string;
  reference: string;
  startsAt: string;
}

/** How complete a set is in the three senses, and what its shortage stops. */
export interface SetStanding {
  /** The `completeness` calculation as it was asked and as it answered. */
  input: CompletenessInput;
  answer: Answer<CompletenessOutput>;
  /** The figures of the answer; lines nobody has counted stand as nothing found. */
  figures: CompletenessOutput;
  uncounted: number;
  unsound: number;
  foreign: number;
  promises: PromiseStanding[];
  /** In a list of all sets, only of those that lack something: the others stop none. */
  cases: CaseStanding[];
  /** The soonest case first, then constructs in the configuration's order. */
  stops: Stop[];
}

export interface StandingGround extends FitGround {
  items: ReadonlyMap<ItemId, Item>;
  settings: SetSettings;
  /** Single packs in store that may travel with a set, by item. */
  packs: ReadonlyMap<ItemId, number>;
}

/** What can be said of a set by itself: the same for every set of its version that holds the same. */
export type OwnStanding = Pick<
  SetStanding,
  'input' | 'answer' | 'figures' | 'uncounted' | 'unsound' | 'promises'
>;

/** Judges one set. Pure. */
export function standingOf(set: JudgedSet, ground: StandingGround): SetStanding {
  return standingAmong(ownStanding(set, ground), set, ground);
}

export function ownStanding(
  set: Pick<JudgedSet, 'lines' | 'boxes' | 'promises'>,
  ground: StandingGround,
): OwnStanding {
  const input = completenessInputOf(set.lines, set.boxes, ground.items, ground.settings);
  const answer = completeness(input);
  const figures = answer.outcome === 'answered' ? answer.answer : answer.known;
  if (figures === null) throw new Error('completeness always gives its figures');
  const promises = set.promises.map(({ name, construct }) => ({
    name,
    ...buildableNow(construct, set.lines, ground.packs, ground),
  }));
  return {
    input,
    answer,
    figures,
    uncounted: set.lines.filter(({ found }) => found === null).length,
    unsound: set.lines.reduce((sum, line) => sum + line.unsound, 0),
    promises,
  };
}

/** The same with what else is told of this very set: foreign pieces in it, and the cases it is promised to. */
export function standingAmong(
  own: OwnStanding,
  set: Pick<JudgedSet, 'lines' | 'foreign' | 'cases'>,
  ground: FitGround,
): SetStanding {
  const cases = set.cases.map(({ caseId, reference, startsAt, construct, beside, packs }) => ({
    caseId,
    reference,
    startsAt,
    ...buildableNow(construct, set.lines, packs, ground, beside),
  }));
  return {
    ...own,
    foreign: set.foreign.reduce((sum, { quantity }) => sum + quantity, 0),
    cases,
    stops: stopsOf(own.promises, cases),
  };
}

/** Whether every line holds what is expected of it: then its shortage stops nothing, whatever it is for. */
export const lacksNothing = (lines: readonly HeldLine[]): boolean =>
  lines.every(({ found, expected }) => found !== null && found >= expected);

function stopsOf(promises: readonly PromiseStanding[], cases: readonly CaseStanding[]): Stop[] {
  const ofCases = [...cases]
    .sort((a, b) => a.startsAt.localeCompare(b.startsAt))
    .filter(isStopped)
    .map(({ caseId, reference, startsAt, stopped, shortItems }): Stop => {
      return { kind: 'case', caseId, reference, startsAt, stopped, shortItems };
    });
  const ofPromises = promises
    .filter(isStopped)
    .map(({ name, stopped, shortItems }): Stop => ({ kind: 'construct', name, stopped, shortItems }));
  return [...ofCases, ...ofPromises];
}

/** Stopped by the shortage: single packs do not help, and the whole set would allow more. */
const isStopped = ({ outcome, stopped }: BuildableNow): boolean => outcome === 'no' && stopped.length > 0;

/** Must-have lines below their minimum that nothing stands in for, by class. */
export function unmetMustHaves({ figures }: Pick<SetStanding, 'figures'>, mustHaveClass: 1 | 2): number {
  return figures.mustHaves.lines.filter(
    (line) => line.state === 'notMet' && line.mustHaveClass === mustHaveClass,
  ).length;
}

/**
 * Orders sets by what a shortage stops: a booked case's plan, the soonest first; then promised constructs, the most
 * stopped steps first; then class 1 and class 2 lines below their minimum; what goes only with single packs; what is not
 * counted; pieces. Zero for sets that stand alike.
 */
export const compareStandings = (a: SetStanding, b: SetStanding): number =>
  compareWeights(weightOf(a), weightOf(b));

/** Sorts sets by `compareStandings`, and those that stand alike by code. */
export function byWhatIsStopped<One extends { standing: SetStanding }>(
  sets: readonly One[],
  code: (one: One) => string,
): One[] {
  return sets
    .map((one) => ({ one, code: code(one), weight: weightOf(one.standing) }))
    .sort((a, b) => compareWeights(a.weight, b.weight) || a.code.localeCompare(b.code))
    .map(({ one }) => one);
}

type Weight = readonly [soonest: string, ...rest: number[]];

function compareWeights(a: Weight, b: Weight): number {
  const at = a.findIndex((value, nth) => value !== b[nth]);
  if (at < 0) return 0;
  return (a[at] as number | string) < (b[at] as number | string) ? -1 : 1;
}

/** The smaller comes first. Worked out once a set: of thousands, each is compared a dozen times. */
const weightOf = (standing: SetStanding): Weight => [
  soonest(standing),
  -stoppedSteps(standing),
  -unmetMustHaves(standing, 1),
  -unmetMustHaves(standing, 2),
  -withPacks(standing),
  -standing.uncounted,
  -piecesShort(standing),
  -standing.foreign,
];

/** Later than any instant a case can begin, as text. */
const NEVER = '9999';

const soonest = ({ stops }: SetStanding): string => {
  const first = stops.find(({ kind }) => kind === 'case');
  return first?.kind === 'case' ? first.startsAt : NEVER;
};

const stoppedSteps = ({ stops }: SetStanding): number =>
  stops.reduce((sum, stop) => sum + stop.stopped.reduce((steps, { stopped }) => steps + stopped, 0), 0);

const withPacks = ({ promises }: Pick<SetStanding, 'promises'>): number =>
  promises.filter(({ outcome }) => outcome === 'onlyWith').length;

export const piecesShort = ({ figures }: Pick<SetStanding, 'figures'>): number =>
  figures.pieces.expected - figures.pieces.found;

/** How a set stands in one word; the worst that is true of it. */
export type StandingWord =
  | 'stopsCase'
  | 'stopsConstruct'
  | 'mustHaveShort'
  | 'withPacks'
  | 'notCounted'
  | 'over'
  | 'short'
  | 'whole';

export function standingWord(standing: SetStanding): StandingWord {
  const { stops, uncounted, foreign, figures } = standing;
  if (stops.some(({ kind }) => kind === 'case')) return 'stopsCase';
  if (stops.length > 0) return 'stopsConstruct';
  if (unmetMustHaves(standing, 1) + unmetMustHaves(standing, 2) > 0) return 'mustHaveShort';
  if (withPacks(standing) > 0) return 'withPacks';
  if (uncounted > 0) return 'notCounted';
  if (foreign > 0 || figures.pieces.surplus > 0) return 'over';
  return piecesShort(standing) > 0 ? 'short' : 'whole';
}
