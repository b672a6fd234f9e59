import { z } from 'zod';
import type { MoveAct } from '../pieces/move';

/** Why the record of a heap is changed without pieces going to a set, a case or another heap. */
export const adjustReason = z.enum([
  'found',
  'notFound',
  'damaged',
  'opened',
  'pastUseBy',
  'sentBack',
  'enteredTooFew',
  'enteredTooMany',
]);
export type AdjustReason = z.infer<typeof adjustReason>;

interface Adjustment {
  direction: 'more' | 'fewer';
  act: Extract<MoveAct, 'received' | 'found' | 'notFound' | 'wasted' | 'sentBack'>;
  /** As the journal keeps it. */
  reason: string;
  /** Whether the heap's labelled pouches are no longer sterile by it. */
  endsBarrier: boolean;
  /** Whether a note has to say how it came about. */
  needsNote: boolean;
}

/**
 * What each reason does. An entry that was wrong is taken back as what it was, a receipt: it is no loss and no use, and
 * counts as neither.
 */
export const ADJUSTMENTS: Record<AdjustReason, Adjustment> = {
  found: { direction: 'more', act: 'found', reason: 'shelf', endsBarrier: false, needsNote: false },
  notFound: { direction: 'fewer', act: 'notFound', reason: 'shelf', endsBarrier: false, needsNote: false },
  damaged: { direction: 'fewer', act: 'wasted', reason: 'damaged', endsBarrier: true, needsNote: false },
  opened: { direction: 'fewer', act: 'wasted', reason: 'opened', endsBarrier: true, needsNote: false },
  pastUseBy: { direction: 'fewer', act: 'wasted', reason: 'pastUseBy', endsBarrier: true, needsNote: false },
  /** To its owner, where it is on consignment, or to whom it came from. */
  sentBack: { direction: 'fewer', act: 'sentBack', reason: 'toOwner', endsBarrier: false, needsNote: true },
  enteredTooFew: {
    direction: 'more',
    act: 'received',
    reason: 'enteredWrongly',
    endsBarrier: false,
    needsNote: true,
  },
  enteredTooMany: {
    direction: 'fewer',
    act: 'sentBack',
    reason: 'enteredWrongly',
    endsBarrier: false,
    needsNote: true,
  },
};
