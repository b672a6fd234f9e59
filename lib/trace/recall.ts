import { z } from 'zod';
import { itemId, loadId, setId } from '../identity/ids';

/** What is called back. */
export const recallOf = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('lot'), itemId, lot: z.string().trim().min(1).max(40) }),
  z.strictObject({ kind: z.literal('item'), itemId }),
  z.strictObject({ kind: z.literal('set'), setId }),
  z.strictObject({ kind: z.literal('load'), loadId }),
]);
export type RecallOf = z.infer<typeof recallOf>;

/** What people are asked to do, by who they are. */
export const recallTask = z.enum(['lookAtCases', 'takeOffShelf', 'keepSetsHeld', 'know']);
export type RecallTask = z.infer<typeof recallTask>;

const reachedCase = z.object({
  caseId: z.string(),
  /** Pieces; of a set or a load, packs. */
  lo: z.number().int(),
  hi: z.number().int(),
  standing: z.enum(['confirmed', 'possible', 'excluded']),
  reasons: z.array(z.string()),
});
export type ReachedCase = z.infer<typeof reachedCase>;

/**
 * A reached case as a reader may see it: of one that a set went to which they count blind, neither how many pieces nor why.
 */
export interface SeenCase extends Omit<ReachedCase, 'lo' | 'hi'> {
  lo: number | null;
  hi: number | null;
}

/** What a recall reaches: as it was when it was opened it is kept, as it is now it is worked out. */
export const recallReach = z.object({
  cases: z.array(reachedCase),
  /** Sets here with what is called back in them, or that may have it; `pieces` to hold. */
  sets: z.array(z.object({ setId: z.string(), pieces: z.number().int() })),
  heaps: z.array(z.object({ stockId: z.string(), pieces: z.number().int() })),
  /** Sets with pieces whose lot nobody knows: held only if somebody says so. */
  unknownLots: z.array(z.string()),
  /** How the records contradict themselves, a sentence for each slot; its set is named. */
  contradictions: z.array(z.object({ setId: z.string(), sentence: z.string() })),
});
export type RecallReach = z.infer<typeof recallReach>;
