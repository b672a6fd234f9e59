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

/** Judges one set. Pure; quick enough for every set of a hospital at once (see `buildableFrom`). */
export function standingOf(set: JudgedSet, ground: StandingGround): SetStanding {
  const input = completenessInputOf(set.lines, set.boxes, ground.items, ground.settings);
  const answer = completeness(input);
  const figures = answer.outcome === 'answered' ? answer.answer : answer.known;
  if (figures === null) throw new Error('completeness always gives its figures');
  const promises = set.promises.map(({ name, construct }) => ({
    name,
    ...buildableNow(construct, set.lines, ground.packs, ground),
  }));
  const cases = set.cases.map(({ caseId, reference, startsAt, construct, beside, packs }) => ({
    caseId,
    reference,
    startsAt,
    ...buildableNow(construct, set.lines, packs, ground, beside),
  }));
  return {
    input,
    answer,
    figures,
    uncounted: set.lines.filter(({ found }) => found === null).length,
    unsound: set.lines.reduce((sum, line) => sum + line.unsound, 0),
    foreign: set.foreign.reduce((sum, { quantity }) => sum + quantity, 0),
    promises,
    cases,
    stops: stopsOf(promises, cases),
  };
}

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
export function compareStandings(a: SetStanding, b: SetStanding): number {
  return (
    soonest(a).localeCompare(soonest(b)) ||
    stoppedSteps(b) - stoppedSteps(a) ||
    unmetMustHaves(b, 1) - unmetMustHaves(a, 1) ||
    unmetMustHaves(b, 2) - unmetMustHaves(a, 2) ||
    withPacks(b) - withPacks(a) ||
    b.uncounted - a.uncounted ||
    piecesShort(b) - piecesShort(a) ||
    b.foreign - a.foreign
  );
}

/** Later than any instant a case can begin, as text. */
const NEVER = '9999';

const soonest = ({ stops }: SetStanding): string => {
  const first = stops.find(({ kind }) => kind === 'case');
  return first?.kind === 'case' ? first.startsAt : NEVER;
};

const stoppedSteps = ({ stops }: SetStanding): number =>
  stops.reduce((sum, stop) => sum + stop.stopped.reduce((steps, { stopped }) => steps + stopped, 0), 0);

const withPacks = ({ promises }: SetStanding): number =>
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
