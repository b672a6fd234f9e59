import type { ReturnOutcome } from '../caseLife/account';
import type { MoveAct } from '../pieces/move';
import type { UseOutcome } from './act';

/**
 * The act of the journal that an outcome is; `null` where nothing leaves the case by it: handed back unopened, or opened
 * and to be reprocessed.
 */
export function moveActOf(
  outcome: UseOutcome,
  reusable: boolean,
): Extract<MoveAct, 'implanted' | 'wasted' | 'notFound'> | null {
  switch (outcome) {
    case 'implanted':
      return 'implanted';
    case 'openedNotImplanted':
      return reusable ? null : 'wasted';
    case 'droppedOrDamaged':
      return 'wasted';
    case 'notFound':
      return 'notFound';
    case 'returnedUnopened':
      return null;
  }
}

/** Whether an outcome is waste, of which the hospital may name the reason. */
export const isWaste = (outcome: UseOutcome, reusable: boolean): boolean =>
  moveActOf(outcome, reusable) === 'wasted';

/** What the return says of it; `null`: its barrier is judged there first. */
export function returnOutcomeOf(outcome: UseOutcome): ReturnOutcome | null {
  switch (outcome) {
    case 'implanted':
    case 'openedNotImplanted':
      return 'opened';
    case 'droppedOrDamaged':
      return 'damaged';
    case 'notFound':
      return 'notFound';
    case 'returnedUnopened':
      return null;
  }
}

/** How a slot stands as pieces are taken out of it on record. */
export interface SlotNow {
  /** Pieces it holds by the journal. */
  holding: number;
  /** Pieces that were not found at a count after the case and are not explained yet. */
  notFoundSince: number;
  /** It was counted after the case: what people said lies there stands, whatever is recorded now. */
  countedSince: boolean;
}

/** Moves into the slot before the pieces leave it, and by how much its counted figure falls. */
export interface SlotStep {
  explained: number;
  found: number;
  fewer: number;
}

/**
 * How pieces leave a slot so that none is taken off twice. Before any count they come off what the slot holds. After one they
 * are already off it: they are first put back, as what was not found then, or as found where that count missed nothing.
 * Pieces beyond what the slot held are found first as well: the journal never has a slot of less than nothing.
 */
export function slotStep({ holding, notFoundSince, countedSince }: SlotNow, pieces: number): SlotStep {
  if (countedSince) {
    const explained = Math.min(pieces, notFoundSince);
    return { explained, found: pieces - explained, fewer: 0 };
  }
  const there = Math.min(pieces, holding);
  return { explained: 0, found: pieces - there, fewer: there };
}
