import type { MoveAct } from '../pieces/move';
import { sinceLotCame } from './sinceLotCame';
import { type SlotBounds, type Standing, slotBounds, standingOf, type Why } from './slotBounds';
import type { Bounds } from './slotFlow';
import type { LotAsked, Outcome } from './slotHistory';
import { type SlotMove, slotHistory } from './slotMoves';

/** A move of pieces whose lot is on record. */
export interface LotMove {
  act: MoveAct;
  quantity: number;
  fromStockId: string | null;
  fromSetId: string | null;
  toStockId: string | null;
  toSetId: string | null;
  caseId: string | null;
  pickId: string | null;
  doneAt: string;
}

/** The slot of a set the lot went into or was read in. */
export interface LotSlot {
  setId: string;
  /** What came and went, in the order in which it was entered: since a piece of the lot can have been there, or more. */
  moves: readonly SlotMove[];
  /** What lay there as they begin, none of it of the lot. */
  before: number;
  /** All that bears on it is among the moves: since the slot was last empty before the lot can have been there. */
  isWhole: boolean;
}

export interface LotFacts {
  lot: string;
  /** Every move that names the lot, of this item, in the order in which they were entered. */
  moves: readonly LotMove[];
  slots: readonly LotSlot[];
}

/** What one case had, from one source. */
export interface CasePart extends Bounds {
  /** `null`: single packs, whose lot is on each. */
  setId: string | null;
  /** `open`: issued to it, and nobody has said yet what became of it. */
  outcome: Outcome | 'open';
  pieces: number;
  /** When the last of them left the slot or was issued, as far as is known. */
  lastAtMs: number;
  why: Why[];
}

export interface CaseTraced extends Bounds {
  caseId: string;
  standing: Standing;
  /** When the last of its pieces left. */
  lastAtMs: number;
  implanted: Bounds;
  parts: CasePart[];
}

/** received = implanted + wasted + held + returned + unaccounted, where some are known between bounds only. */
export interface LotBalance {
  received: number;
  implanted: Bounds;
  wasted: Bounds;
  /** On the shelf, in slots, and with cases whose outcome nobody has entered: all of it is to be held. */
  held: Bounds;
  returned: Bounds;
  unaccounted: Bounds;
  /** What `unaccounted` is made of. */
  notFound: Bounds;
  setAside: Bounds;
  /** Taken out of a slot with its lot not read, or gone another way. */
  lotLost: Bounds;
}

export interface LotTrace {
  lot: string;
  /** `null`: it was here when the journal began. */
  firstHereAt: string | null;
  cases: CaseTraced[];
  slots: { setId: string; bounds: SlotBounds }[];
  heaps: { stockId: string; quantity: number }[];
  balance: LotBalance;
  /** Sets whose slots must be read as a whole before this holds: their records since do not add up. */
  inDoubt: string[];
}

/**
 * Where a lot of an item has gone: single packs by the lot on them, pieces in slots between exact bounds
 * (`slotBounds`). Slots are apart from one another, so that bounds of several add up.
 */
export function lotTrace({ lot, moves, slots }: LotFacts): LotTrace {
  const firstHereAt = lotFirstHere(moves);
  const asked: LotAsked = { lot, firstHereAtMs: firstHereAt === null ? null : Date.parse(firstHereAt) };
  const inDoubt: string[] = [];
  const bounded = slots.map((slot) => {
    const { setId, moves: its, before, isWhole } = slot;
    const bounds = slotBounds(sinceLotCame(slotHistory(its, before), asked), asked);
    if (!isWhole && bounds.contradiction !== null) inDoubt.push(setId);
    return { setId, bounds };
  });
  return {
    lot,
    firstHereAt,
    cases: casesOf(packParts(moves), bounded),
    slots: bounded,
    heaps: heapsOf(moves),
    balance: balanceOf(moves, bounded),
    inDoubt,
  };
}

/** Before it, no piece of the lot can have been here; `null`: it was here when the journal began. */
export function lotFirstHere(moves: readonly LotMove[]): string | null {
  const first = moves[0];
  if (first === undefined || first.act === 'opening') return null;
  return moves.map(({ doneAt }) => doneAt).sort()[0] ?? null;
}

/**
 * Whether what lay in a slot earlier decides, and must be known piece by piece: another lot was read later, or what is
 * explained may have been lost by then.
 */
export const isEarlierNeeded = (moves: readonly SlotMove[], lotAsked: string): boolean =>
  moves.some(
    ({ way, act, lot }) => act === 'explained' || (way === 'out' && lot !== null && lot !== lotAsked),
  );

export const sumOf = (some: readonly Bounds[]): Bounds => ({
  lo: some.reduce((sum, { lo }) => sum + lo, 0),
  hi: some.reduce((sum, { hi }) => sum + hi, 0),
});
/** All that each case had, from wherever. */
function casesOf(packs: readonly (CasePart & { caseId: string })[], slots: LotTrace['slots']): CaseTraced[] {
  const cases = new Map<string, CaseTraced>();
  const add = (caseId: string, part: CasePart) => {
    const { lo, hi, outcome, lastAtMs } = part;
    const known = cases.get(caseId);
    const implanted = outcome === 'implanted';
    if (known === undefined) {
      cases.set(caseId, {
        caseId,
        lo,
        hi,
        standing: 'excluded',
        lastAtMs,
        implanted: implanted ? { lo, hi } : { lo: 0, hi: 0 },
        parts: [part],
      });
      return;
    }
    known.lo += lo;
    known.hi += hi;
    known.lastAtMs = Math.max(known.lastAtMs, lastAtMs);
    if (implanted) {
      known.implanted.lo += lo;
      known.implanted.hi += hi;
    }
    known.parts.push(part);
  };
  for (const { caseId, ...part } of packs) add(caseId, part);
  for (const { setId, bounds } of slots) {
    for (const { case: caseId, outcome, pieces, lastAtMs, lo, hi, why, isBeside } of bounds.destinations)
      if (caseId !== null && !isBeside) add(caseId, { setId, outcome, pieces, lastAtMs, lo, hi, why });
  }
  const all = [...cases.values()];
  for (const one of all) one.standing = standingOf(one);
  return all;
}

const exactly = (pieces: number): Bounds => ({ lo: pieces, hi: pieces });

/** Single packs issued to cases: each has its lot on it. */
function packParts(moves: readonly LotMove[]): (CasePart & { caseId: string })[] {
  const found = new Map<
    string,
    { caseId: string; outcome: Outcome | 'open'; pieces: number; lastAtMs: number }
  >();
  const add = (caseId: string, outcome: Outcome | 'open', quantity: number, atMs: number) => {
    const key = `${caseId} ${outcome}`;
    const one = found.get(key) ?? { caseId, outcome, pieces: 0, lastAtMs: 0 };
    found.set(key, { ...one, pieces: one.pieces + quantity, lastAtMs: Math.max(one.lastAtMs, atMs) });
  };
  for (const { act, quantity, caseId, pickId, fromSetId, doneAt } of moves) {
    if (caseId === null || pickId === null || fromSetId !== null) continue;
    const atMs = Date.parse(doneAt);
    add(caseId, 'open', act === 'issued' ? quantity : -quantity, atMs);
    if (act === 'implanted' || act === 'wasted' || act === 'notFound') add(caseId, act, quantity, atMs);
  }
  return [...found.values()]
    .filter(({ pieces }) => pieces > 0)
    .map(({ pieces, ...one }) => ({
      ...one,
      pieces,
      setId: null,
      ...exactly(pieces),
      why: [{ kind: 'read', pieces }],
    }));
}

/** What lies on each heap of the lot by the journal. */
function heapsOf(moves: readonly LotMove[]): LotTrace['heaps'] {
  const lying = new Map<string, number>();
  for (const { fromStockId, toStockId, quantity } of moves) {
    if (toStockId !== null) lying.set(toStockId, (lying.get(toStockId) ?? 0) + quantity);
    if (fromStockId !== null) lying.set(fromStockId, (lying.get(fromStockId) ?? 0) - quantity);
  }
  return [...lying].map(([stockId, quantity]) => ({ stockId, quantity }));
}

function balanceOf(moves: readonly LotMove[], slots: LotTrace['slots']): LotBalance {
  const total = (wanted: (move: LotMove) => boolean) =>
    moves.reduce((sum, move) => sum + (wanted(move) ? move.quantity : 0), 0);
  const inSlots = (outcome: Outcome) => sumOf(slots.map(({ bounds }) => bounds.outcomes[outcome]));
  /** Of single packs and heaps: what left slots is in their bounds. */
  const byLot = (asked: MoveAct) =>
    exactly(total(({ act, fromSetId }) => fromSetId === null && act === asked));

  const came = total(
    ({ act, fromStockId, fromSetId, pickId, toStockId, toSetId }) =>
      // what is explained was here, and so was what is repaired
      act !== 'explained' &&
      act !== 'repaired' &&
      fromStockId === null &&
      fromSetId === null &&
      pickId === null &&
      (toStockId ?? toSetId) !== null,
  );
  const withCases =
    total(({ act }) => act === 'issued') -
    total(({ pickId, fromSetId, act }) => pickId !== null && fromSetId === null && act !== 'issued');
  // read as it was taken out, and put on a heap of its lot: it is counted there
  const readOntoHeap = total(({ fromSetId, toStockId }) => fromSetId !== null && toStockId !== null);
  const shelf = inSlots('shelf');
  const notFound = sumOf([byLot('notFound'), inSlots('notFound')]);
  // put aside, and later settled with its lot on record: it is counted there
  const settled = total(({ act }) => act === 'repaired' || act === 'discarded');
  const aside = inSlots('setAside');
  const setAside = { lo: Math.max(0, aside.lo - settled), hi: Math.max(0, aside.hi - settled) };
  const lotLost = sumOf([
    { lo: shelf.lo - readOntoHeap, hi: shelf.hi - readOntoHeap },
    inSlots('other'),
    ...slots.map(({ bounds }) => bounds.unrecorded),
  ]);
  const heaps = heapsOf(moves).reduce((sum, { quantity }) => sum + quantity, 0);
  // a piece of unknown lot may be of it beside those received; the balance is of those
  const ofReceived = (...some: Bounds[]): Bounds => {
    const { lo, hi } = sumOf(some);
    return { lo, hi: Math.max(lo, Math.min(hi, came)) };
  };
  return {
    received: came,
    implanted: ofReceived(byLot('implanted'), inSlots('implanted')),
    wasted: ofReceived(byLot('wasted'), byLot('discarded'), inSlots('wasted')),
    held: ofReceived(exactly(heaps + withCases), ...slots.map(({ bounds }) => bounds.now)),
    returned: byLot('sentBack'),
    unaccounted: ofReceived(notFound, setAside, lotLost),
    notFound: ofReceived(notFound),
    setAside: ofReceived(setAside),
    lotLost: ofReceived(lotLost),
  };
}
