import { z } from 'zod';
import type { MoveAct } from '../pieces/move';

/** What became of a piece that is not ours; `foundAgain`: what was told as not found lies here after all. */
export const usageOutcome = z.enum([
  'implanted',
  'openedNotImplanted',
  'droppedOrDamaged',
  'pastUseBy',
  'notFound',
  'foundAgain',
]);
export type UsageOutcome = z.infer<typeof usageOutcome>;

/** What a move is to the owner of its pieces; `null`: it is no use (they lie somewhere, or went back to their owner). */
export function outcomeOf(act: MoveAct, reason: string | null): UsageOutcome | null {
  switch (act) {
    case 'implanted':
      return 'implanted';
    case 'notFound':
      return 'notFound';
    case 'found':
      return 'foundAgain';
    case 'wasted':
      if (reason === 'pastUseBy') return 'pastUseBy';
      return reason === 'damaged' || reason === 'packDamaged' ? 'droppedOrDamaged' : 'openedNotImplanted';
    default:
      return null;
  }
}
