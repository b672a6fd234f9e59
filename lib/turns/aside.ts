import { z } from 'zod';
import type { Item } from '../catalogue/item';
import type { PieceCondition } from '../sets/setState';

/** What became of a piece put aside. */
export const asideOutcome = z.enum(['repaired', 'discarded', 'notRepairable']);
export type AsideOutcome = z.infer<typeof asideOutcome>;

const IMPLANTS: ReadonlySet<Item['kind']> = new Set(['plate', 'screw', 'washer']);

/**
 * What may become of an unfit piece. What is bent is never straightened, and an unfit implant or single-use piece is never
 * mended: both are discarded.
 */
export function outcomesFor(
  condition: PieceCondition,
  { kind, singleUse }: { kind: Item['kind']; singleUse: boolean },
): AsideOutcome[] {
  if (condition === 'bent' || singleUse || IMPLANTS.has(kind)) return ['discarded'];
  return ['repaired', 'discarded', 'notRepairable'];
}
