import type { Verdict } from '../fit/question';
import type { ItemId } from '../identity/ids';

/**
 * What a planned construct makes necessary, before anyone looks into the store. A construct falls into
 * steps (one plate, one filled hole, one free screw); a step needs pieces that stay in the patient, counted
 * one by one, and instruments in chains whose links fit each other.
 */
export interface Needs {
  steps: Step[];
  /** One per implanted piece: two holes of 16 mm are two needs. */
  pieces: PieceNeed[];
  /** Chains of instruments; steps with the same answer share one. */
  chains: ChainNeed[];
  /** What the plan itself leaves open or asks in vain, whatever is in store. */
  faults: PlanFault[];
}

/** `P1` for a plate, `P1/S3` for a hole of it, `L1` for a free screw. */
export type StepKey = string;

export interface Step {
  key: StepKey;
  kind: 'plate' | 'hole' | 'freeScrew';
  plateKey: string | null;
  holeId: string | null;
  purpose: 'plate' | 'neutral' | 'offset' | 'lag' | 'locked' | 'temporaryWire';
  /** The screw family of the fill; `null` for a plate or a wire. */
  screwFamily: string | null;
}

/** One answer of the fit rules that a need rests on, with what it was asked about. */
export interface LinkVerdict {
  /** The items asked about, in the question's order; holes are named by `holeId`. */
  itemIds: ItemId[];
  holeId: string | null;
  verdict: Verdict;
}

/** An item that would serve, by how much longer than the stated length it is. */
export interface AcceptedPiece {
  itemId: ItemId;
  lengthUm: number | null;
  longerUm: number;
  /** `seats`, `sides` and other answers for this item in this step. */
  answers: LinkVerdict[];
}

export interface PieceNeed {
  /** Stable in its construct: `piece:P1/S3`. */
  id: string;
  step: StepKey;
  what: 'plate' | 'screw' | 'washer' | 'wire';
  /** Established fits only, the stated length first. */
  accepts: AcceptedPiece[];
  /** Would serve if the missing values were known; never counted as a fit. */
  notEstablished: AcceptedPiece[];
  /** Does not fit, or is withdrawn or recalled: why the planned item itself is refused. */
  refused: AcceptedPiece[];
  /** Where the length comes from; `null` for what has no length in the plan. */
  length: LengthBasis | null;
}

export type LengthBasis =
  | { kind: 'exact'; askedUm: number; acceptLongerUm: number }
  | {
      kind: 'spread';
      meanUm: number;
      sdUm: number;
      /** The made length expected from the mean: the next longer for two cortices, the nearest for one. */
      rounding: 'up' | 'nearest';
      expectedUm: number | null;
      acceptLongerUm: number;
    }
  | { kind: 'notStated' };

/** The part an instrument plays in a chain. */
export type SlotName =
  | 'pilotBit'
  | 'sleeve'
  | 'glidingBit'
  | 'glidingSleeve'
  | 'insertSleeve'
  | 'tap'
  | 'countersink'
  | 'gauge'
  | 'driver'
  | 'torqueLimiter'
  | 'handle'
  | 'glidingHandle'
  | 'wireDriver';

export type ChainKind =
  | 'drilling'
  | 'lagDrilling'
  | 'tapping'
  | 'countersinking'
  | 'measuring'
  | 'driving'
  | 'wiring';

export interface Candidate {
  /** `null`: nothing is needed here (a driver with a fixed handle needs no handle). */
  itemId: ItemId | null;
  /** The end of a sleeve that takes part. */
  endIndex: number | null;
  /** Answers about this item alone in this step: it pilots the screw, it seats on the hole. */
  answers: LinkVerdict[];
  /** False when one of its answers is not established. */
  established: boolean;
}

export interface Slot {
  name: SlotName;
  candidates: Candidate[];
  /** How many pieces of the chosen item the chain asks for: 1, or 2 where a back-up is asked. */
  pieces: number;
}

/** Which candidates of two slots fit each other. Slots and links form a tree. */
export interface SlotLink {
  first: number;
  second: number;
  pairs: { first: number; second: number; answer: LinkVerdict | null; established: boolean }[];
}

export interface ChainNeed {
  /** `chain:drilling:1`, counted in plan order; stable in its construct. */
  id: string;
  kind: ChainKind;
  /** `backUp`: a second piece of what breaks most; never stops a step. */
  importance: 'mustHave' | 'backUp';
  /** Every step that needs it. */
  steps: StepKey[];
  /** The screw the answers were asked with, and the wire for a wiring chain. */
  forItemId: ItemId;
  slots: Slot[];
  links: SlotLink[];
}

export type PlanFault =
  | { kind: 'unknownPlate'; step: StepKey; itemId: ItemId }
  | { kind: 'plateNotCurrent'; step: StepKey; itemId: ItemId; status: 'withdrawn' | 'recalled' }
  | { kind: 'unknownHole'; step: StepKey }
  | { kind: 'unknownFamily'; step: StepKey; family: string }
  | { kind: 'unknownItem'; step: StepKey; itemId: ItemId }
  | { kind: 'itemNotCurrent'; step: StepKey; itemId: ItemId; status: 'withdrawn' | 'recalled' }
  | { kind: 'lengthNotMade'; step: StepKey; family: string; askedUm: number; madeUm: number[] }
  | { kind: 'lengthNotStated'; step: StepKey }
  /** A value of the planned item that decides what the step needs is not stated. */
  | { kind: 'factNotStated'; step: StepKey; itemId: ItemId; facts: string[] }
  /** Screw holes of which the plan says nothing, not even that they are left empty. */
  | { kind: 'holesNotDecided'; step: StepKey; holeIds: string[] }
  /** Nothing in the whole catalogue makes a chain, however full the store is. */
  | { kind: 'noChainInCatalogue'; chainId: string; chain: ChainKind; steps: StepKey[] }
  /** The rules refuse what the plan states; the findings say why. */
  | { kind: 'refused'; step: StepKey; itemId: ItemId; answers: LinkVerdict[] }
  /** A wire wider than its hole; a washer that the thread does not pass, or through which the head falls. */
  | { kind: 'doesNotPass'; step: StepKey; itemId: ItemId };
