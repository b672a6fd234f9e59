/** What became of a piece that left the slot. `other`: known, but none of these (a move to another slot). */
export const OUTCOMES = ['implanted', 'wasted', 'notFound', 'setAside', 'shelf', 'other'] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** Pieces that came into a slot. `lot: null`: nobody knows it. */
export interface Arrival {
  kind: 'in';
  atMs: number;
  quantity: number;
  lot: string | null;
}

/** Pieces that left a slot. `lot`: read as they left; `null`: not read. `case`: an opaque reference, or no case. */
export interface Departure {
  kind: 'out';
  atMs: number;
  quantity: number;
  lot: string | null;
  case: string | null;
  outcome: Outcome;
}

export type SlotEvent = Arrival | Departure;

/**
 * All that came into one slot of one item and left it: in the order in which it happened, which decides where two share
 * a time.
 */
export interface SlotHistory {
  /** Pieces that lay there as it begins, none of them of the lot asked about; none where it is left out. */
  before?: number;
  events: readonly SlotEvent[];
  /** What lies there now, by the lots read; `null`: not looked at, so whatever is left over. */
  now: readonly { lot: string | null; quantity: number }[] | null;
}

/** The lot that is asked about. */
export interface LotAsked {
  lot: string;
  /** Before it, no piece of the lot can have been here; `null`: not known, so any piece of unknown lot may be of it. */
  firstHereAtMs: number | null;
}

/** Whether a piece that was here then without a known lot may be of the one asked about. */
export const mayBeOfLot = (atMs: number, asked: LotAsked) =>
  asked.firstHereAtMs === null || atMs >= asked.firstHereAtMs;
