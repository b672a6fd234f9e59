import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { Rules } from '../kits/askOnce';
import { type Blocked, type Buildable, buildableFrom } from '../kits/buildable';
import type { StepKey } from '../kits/need';
import type { Construct } from '../plans/plan';
import type { HeldLine } from './holdings';

/** Sound pieces of an item at hand. */
export interface Pieces {
  itemId: ItemId;
  found: number;
}

/** What the fit rules are asked against. */
export interface FitGround {
  catalogue: readonly Item[];
  engine: Rules;
}

export type StepPurpose = 'plate' | 'neutral' | 'offset' | 'lag' | 'locked' | 'temporaryWire';

/** How many steps of one purpose are stopped, of how many the construct has. */
export interface StoppedPurpose {
  purpose: StepPurpose;
  stopped: number;
  of: number;
}

/** Whether a set as it is now allows a construct it is meant to allow. */
export interface BuildableNow {
  /** `onlyWith`: single packs in store, named, close what the set leaves open. `notEstablished`: a count or a value is missing. */
  outcome: 'yes' | 'onlyWith' | 'no' | 'notEstablished';
  steps: number;
  stepsPossible: number;
  /** What stops, by purpose; without what even the whole set would not allow. */
  stopped: StoppedPurpose[];
  /** Short lines of the set that would open what is stopped. */
  shortItems: ItemId[];
  blocked: Blocked[];
  onlyWith: { itemId: ItemId; pieces: number }[];
  /** Steps that even the whole set would not allow: the configuration's matter, not the shortage's. */
  notEvenWhole: StepKey[];
}

/**
 * Whether the sound pieces of a set build a construct now, and what its shortage stops: what the whole set would allow
 * and the present one does not. Lines nobody has counted are taken as empty; where a full line could turn the answer, it
 * is not established.
 *
 * @param packs pieces in store as single packs that may travel with the set
 */
export function buildableNow(
  construct: Construct,
  lines: readonly HeldLine[],
  packs: ReadonlyMap<ItemId, number>,
  ground: FitGround,
  beside: readonly Pieces[] = [],
): BuildableNow {
  const build = (contents: readonly Pieces[]) =>
    buildableFrom(construct, [...contents, ...beside], ground.catalogue, ground.engine);
  const present = presentPieces(lines);
  const now = build(present);
  const whole = build(wholePieces(lines));
  const wholeStops = new Set(stoppedSteps(whole));
  const stops = stoppedSteps(now).filter((step) => !wholeStops.has(step));
  const blocked = now.blocked.filter(({ steps }) => steps.some((step) => stops.includes(step)));
  const onlyWith = now.outcome === 'no' ? packsThatClose(now, present, packs, build) : null;
  return {
    outcome: onlyWith ? 'onlyWith' : outcomeOf(now, lines, build),
    steps: now.steps,
    stepsPossible: now.stepsPossible,
    stopped: byPurpose(construct, stops),
    shortItems: shortItemsOf(blocked, lines),
    blocked,
    onlyWith: onlyWith ?? [],
    notEvenWhole: [...wholeStops],
  };
}

/** Pieces of a set as last counted; a line nobody counted holds none for certain. */
export function presentPieces(lines: readonly HeldLine[]): Pieces[] {
  return lines.map(({ itemId, found }) => ({ itemId, found: found ?? 0 }));
}

function wholePieces(lines: readonly HeldLine[]): Pieces[] {
  return lines.map(({ itemId, found, expected }) => ({ itemId, found: Math.max(found ?? 0, expected) }));
}

function outcomeOf(
  now: Buildable,
  lines: readonly HeldLine[],
  build: (contents: readonly Pieces[]) => Buildable,
): BuildableNow['outcome'] {
  if (now.outcome !== 'no' || lines.every(({ found }) => found !== null)) return now.outcome;
  const atBest = lines.map(({ itemId, found, expected }) => ({ itemId, found: found ?? expected }));
  return build(atBest).outcome === 'no' ? 'no' : 'notEstablished';
}

const stoppedSteps = (answer: Buildable): StepKey[] => [
  ...new Set(answer.blocked.flatMap(({ steps }) => steps)),
];

/**
 * The fewest packs found that close everything the set leaves open, or `null`. Every answer was tried: with the packs
 * named the construct is built, and without any one of them it is not.
 */
function packsThatClose(
  first: Buildable,
  present: readonly Pieces[],
  packs: ReadonlyMap<ItemId, number>,
  build: (contents: readonly Pieces[]) => Buildable,
): BuildableNow['onlyWith'] | null {
  const taken = new Map<ItemId, number>();
  const left = (id: ItemId) => (packs.get(id) ?? 0) - (taken.get(id) ?? 0);
  const asPieces = () => [...taken].map(([itemId, found]) => ({ itemId, found }));
  let answer = first;
  // each round names what is still open; a construct has no more needs than that many rounds
  for (let round = 0; answer.outcome === 'no'; round += 1) {
    const before = taken.size === 0 ? 0 : [...taken.values()].reduce((sum, pieces) => sum + pieces, 0);
    for (const need of answer.blocked) {
      const way =
        need.kind === 'chain'
          ? need.wouldClose.find((ids) => ids.length > 0 && ids.every((id) => left(id) > 0 || taken.has(id)))
          : need.accepts.filter((id) => left(id) > 0).slice(0, 1);
      if (!way || way.length === 0) return null;
      for (const id of way) {
        if (need.kind === 'piece' || !taken.has(id)) taken.set(id, (taken.get(id) ?? 0) + 1);
      }
    }
    const after = [...taken.values()].reduce((sum, pieces) => sum + pieces, 0);
    if (after === before || round > 20) return null;
    answer = build([...present, ...asPieces()]);
  }
  // what is not known to fit is no way to build it, whatever is fetched
  if (answer.outcome !== 'yes') return null;
  for (const [id, pieces] of [...taken]) {
    for (let fewer = pieces - 1; fewer >= 0; fewer -= 1) {
      taken.set(id, fewer);
      if (build([...present, ...asPieces()]).outcome === 'no') {
        taken.set(id, fewer + 1);
        break;
      }
    }
    if (taken.get(id) === 0) taken.delete(id);
  }
  return asPieces().map(({ itemId, found }) => ({ itemId, pieces: found }));
}

/** Which lines of the set are to be refilled: the way that lies wholly in its own short lines, where there is one. */
function shortItemsOf(blocked: readonly Blocked[], lines: readonly HeldLine[]): ItemId[] {
  const short = new Set(
    lines.filter(({ found, expected }) => (found ?? 0) < expected).map(({ itemId }) => itemId),
  );
  const named = blocked.flatMap((need) => {
    if (need.kind === 'piece') return need.accepts.filter((id) => short.has(id));
    return need.wouldClose.find((way) => way.every((id) => short.has(id))) ?? need.wouldClose[0] ?? [];
  });
  return [...new Set(named)];
}

/** Steps by what they are for, in the order people name them. */
function byPurpose(construct: Construct, stops: readonly StepKey[]): StoppedPurpose[] {
  const purposeOf = new Map<StepKey, StepPurpose>();
  for (const { key, fills } of construct.plates) {
    purposeOf.set(key, 'plate');
    for (const [hole, { purpose }] of Object.entries(fills))
      if (purpose !== 'empty') purposeOf.set(`${key}/${hole}`, purpose);
  }
  for (const { key } of construct.freeScrews) purposeOf.set(key, 'lag');
  const count = (steps: Iterable<StepKey>, purpose: StepPurpose) =>
    [...steps].filter((step) => purposeOf.get(step) === purpose).length;
  return PURPOSES.flatMap((purpose) => {
    const stopped = count(stops, purpose);
    return stopped === 0 ? [] : [{ purpose, stopped, of: count(purposeOf.keys(), purpose) }];
  });
}

const PURPOSES: StepPurpose[] = ['plate', 'lag', 'offset', 'neutral', 'locked', 'temporaryWire'];
