import { type Contradiction, contradictionOf } from './contradiction';
import { slotCount } from './slotCount';
import { type Bounds, slotFlow } from './slotFlow';
import { type LotAsked, mayBeOfLot, OUTCOMES, type Outcome, type SlotHistory } from './slotHistory';
import { type End, endsOf, slotNetwork } from './slotNetwork';

/** Why a bound is what it is. Counts of pieces; the words are in `lib/wording/trace`. */
export type Why =
  | { kind: 'read'; pieces: number }
  | { kind: 'otherRead'; pieces: number }
  | { kind: 'leftBefore'; pieces: number }
  /** So few of other lots were there that the rest must be of this one. */
  | { kind: 'othersTooFew'; pieces: number; others: number }
  /** All of the lot is shown to have been elsewhere. */
  | { kind: 'noneLeft' }
  /** There were not as many of the lot as left unread. */
  | { kind: 'noMoreOfIt'; most: number; unread: number }
  | { kind: 'mixed'; unread: number }
  | { kind: 'contradicted'; unread: number };

export type Standing = 'confirmed' | 'possible' | 'excluded';

/** `confirmed`: at least `lo` are of the lot. `possible`: none need be. `excluded`: none can be. */
export const standingOf = ({ lo, hi }: Bounds): Standing =>
  lo > 0 ? 'confirmed' : hi > 0 ? 'possible' : 'excluded';

/** What one destination got from the slot. */
interface DestinationBounds extends Bounds {
  case: string | null;
  outcome: Outcome;
  pieces: number;
  /** When the last of them left. */
  lastAtMs: number;
  standing: Standing;
  why: Why[];
  /** All of it left before any of the lot can have been there, or after all of the lot had certainly gone. */
  isBeside: boolean;
}

export interface SlotBounds {
  /** What came in: of the lot, and of unknown lot that may be of it. */
  arrived: { ofLot: number; mayBe: number };
  destinations: DestinationBounds[];
  /** All cases together, whatever the outcome. */
  cases: Bounds;
  /** Per outcome, all that had it. */
  outcomes: Record<Outcome, Bounds>;
  /** What lies there; `toHold`: the pieces that may be of the lot, all of which are held. */
  now: Bounds & { pieces: number; toHold: number };
  /** Came in, did not go out by any record, and does not lie there. */
  unrecorded: Bounds & { pieces: number };
  contradiction: Contradiction | null;
}

/**
 * Where the pieces of one lot that came into a slot have gone, where lots mix and were not always read: the exact least
 * and most for every case and every other end, over all the ways in which the records can have come about
 * (calculations.md §11). Pieces of unknown lot may be of any lot that was here by then.
 *
 * Where the records contradict themselves, counting proves nothing: a piece is confirmed or excluded only by its lot
 * having been read, or by its having left before the lot was here; all others are possible.
 */
export function slotBounds(history: SlotHistory, asked: LotAsked): SlotBounds {
  const ends = endsOf(history);
  const together = groupsOf(history, ends);
  const { destinations } = together;
  const groups = [
    ...destinations.map((one) => one.ends),
    together.cases,
    together.now,
    together.unrecorded,
    ...OUTCOMES.map((outcome) => together.outcomes[outcome]),
  ];
  const counted = slotCount(history, ends, asked, groups);
  const slot = counted === null ? slotNetwork(history, ends, asked) : null;
  const contradiction = slot && contradictionOf(slot);
  const bounds =
    counted ??
    (slot === null || contradiction
      ? groups.map((group) => provenApart(group, ends, asked))
      : slotFlow(slot, groups));
  const after = (place: number) => bounds[destinations.length + place] as Bounds;
  const [cases, now, unrecorded] = [after(0), after(1), after(2)];
  const pieces = (group: readonly number[]) => group.reduce((sum, at) => sum + (ends[at]?.quantity ?? 0), 0);
  const lying = together.now.map((at) => ends[at] as End);

  const first = firstPossible(history, asked);
  /** Before any of the lot can have been there: by the order of the records, or, if they can't be right, by time alone. */
  const hasLeft = ({ is, atMs }: End) =>
    contradiction ? atMs !== null && !mayBeOfLot(atMs, asked) : typeof is === 'number' && is < first;
  /** The last end that can have had any of it: whatever left later left a slot without it. */
  const gone =
    now.hi > 0 || unrecorded.hi > 0 || contradiction
      ? ends.length
      : destinations.reduce(
          (last, one, at) => ((bounds[at] as Bounds).hi > 0 ? Math.max(last, ...one.ends) : last),
          -1,
        );

  return {
    arrived: {
      ofLot: cameIn(history, ({ lot }) => lot === asked.lot),
      mayBe: cameIn(history, ({ lot, atMs }) => lot === null && mayBeOfLot(atMs, asked)),
    },
    destinations: destinations.map((one, at) => {
      const own = bounds[at] as Bounds;
      return {
        case: one.case,
        outcome: one.outcome,
        pieces: pieces(one.ends),
        lastAtMs: one.ends.reduce((last, end) => Math.max(last, ends[end]?.atMs ?? last), 0),
        lo: own.lo,
        hi: own.hi,
        standing: standingOf(own),
        why: whyOf(
          one.ends.map((end) => ends[end] as End),
          own,
          asked,
          hasLeft,
          contradiction !== null,
        ),
        isBeside: own.hi === 0 && one.ends.every((end) => end > gone || hasLeft(ends[end] as End)),
      };
    }),
    cases,
    outcomes: Object.fromEntries(OUTCOMES.map((outcome, at) => [outcome, after(3 + at)])) as Record<
      Outcome,
      Bounds
    >,
    now: {
      ...now,
      pieces: lying.reduce((sum, { quantity }) => sum + quantity, 0),
      toHold:
        now.hi === 0
          ? 0
          : lying.reduce(
              (sum, { lot, quantity }) => sum + (lot === null || lot === asked.lot ? quantity : 0),
              0,
            ),
    },
    unrecorded: { ...unrecorded, pieces: pieces(together.unrecorded) },
    contradiction,
  };
}

interface DestinationEnds {
  case: string | null;
  outcome: Outcome;
  ends: number[];
}

/** Places among the ends, each in rising order. */
interface Groups {
  /** Ends of one outcome in one case are one destination; those of no case, one for each outcome. */
  destinations: DestinationEnds[];
  cases: number[];
  now: number[];
  unrecorded: number[];
  outcomes: Record<Outcome, number[]>;
}

function groupsOf({ events }: SlotHistory, ends: readonly End[]): Groups {
  const outcomes = Object.fromEntries(OUTCOMES.map((outcome) => [outcome, [] as number[]]));
  const groups: Groups = {
    destinations: [],
    cases: [],
    now: [],
    unrecorded: [],
    outcomes: outcomes as Groups['outcomes'],
  };
  const ofCase = new Map<string | null, DestinationEnds[]>();
  for (let at = 0; at < ends.length; at += 1) {
    const { is } = ends[at] as End;
    if (typeof is !== 'number') {
      groups[is].push(at);
      continue;
    }
    const event = events[is];
    if (event?.kind !== 'out') continue;
    if (event.case !== null) groups.cases.push(at);
    groups.outcomes[event.outcome].push(at);
    const its = ofCase.get(event.case);
    const known = its?.find(({ outcome }) => outcome === event.outcome);
    if (known) {
      known.ends.push(at);
      continue;
    }
    const one = { case: event.case, outcome: event.outcome, ends: [at] };
    if (its) its.push(one);
    else ofCase.set(event.case, [one]);
    groups.destinations.push(one);
  }
  return groups;
}

function cameIn({ events }: SlotHistory, wanted: (arrival: { lot: string | null; atMs: number }) => boolean) {
  return events.reduce((sum, event) => sum + (event.kind === 'in' && wanted(event) ? event.quantity : 0), 0);
}

/** The place among the events from which on a piece of the lot can be in the slot. */
function firstPossible({ events }: SlotHistory, asked: LotAsked): number {
  const at = events.findIndex(
    (event) =>
      event.kind === 'in' &&
      (event.lot === asked.lot || (event.lot === null && mayBeOfLot(event.atMs, asked))),
  );
  return at === -1 ? events.length : at;
}

/** Without counting: what was read is of the lot, and whatever was not read may be, once the lot can have been here. */
function provenApart(group: readonly number[], ends: readonly End[], asked: LotAsked): Bounds {
  const bounds = { lo: 0, hi: 0 };
  for (const at of group) {
    const { lot, quantity, atMs } = ends[at] as End;
    if (lot === asked.lot) bounds.lo += quantity;
    if (lot === asked.lot || (lot === null && (atMs === null || mayBeOfLot(atMs, asked))))
      bounds.hi += quantity;
  }
  return bounds;
}

function whyOf(
  ends: readonly End[],
  { lo, hi }: Bounds,
  asked: LotAsked,
  hasLeft: (end: End) => boolean,
  isContradicted: boolean,
): Why[] {
  let [read, otherRead, leftBefore, unread] = [0, 0, 0, 0];
  for (const end of ends) {
    if (end.lot === asked.lot) read += end.quantity;
    else if (end.lot !== null) otherRead += end.quantity;
    else if (hasLeft(end)) leftBefore += end.quantity;
    else unread += end.quantity;
  }

  const why: Why[] = [];
  if (read > 0) why.push({ kind: 'read', pieces: read });
  if (otherRead > 0) why.push({ kind: 'otherRead', pieces: otherRead });
  if (leftBefore > 0) why.push({ kind: 'leftBefore', pieces: leftBefore });
  if (unread === 0) return why;
  if (isContradicted) return [...why, { kind: 'contradicted', unread }];
  const unreadLo = lo - read;
  const unreadHi = hi - read;
  if (unreadLo > 0) why.push({ kind: 'othersTooFew', pieces: unread, others: unread - unreadLo });
  if (unreadHi === 0) why.push({ kind: 'noneLeft' });
  else if (unreadHi < unread) why.push({ kind: 'noMoreOfIt', most: unreadHi, unread });
  if (unreadHi > unreadLo) why.push({ kind: 'mixed', unread });
  return why;
}
