import type { RecallReach } from '@/lib/trace/recall';
import { recallWords } from '@/lib/wording/recall';

/** What a recall reaches, as a reader may see it. */
export interface ReachSeen extends Omit<RecallReach, 'sets'> {
  /** `pieces` is `null` where the reader counts that set, and is not to see what lies in it. */
  sets: { setId: string; pieces: number | null }[];
}

/** Leaves out every figure of sets the reader counts blind; that they are reached is no secret. */
export const reachSeen = (reach: RecallReach, hidden: ReadonlySet<string>): ReachSeen => ({
  ...reach,
  sets: reach.sets.map(({ setId, pieces }) => ({ setId, pieces: hidden.has(setId) ? null : pieces })),
  contradictions: reach.contradictions.map(({ setId, sentence }) => ({
    setId,
    sentence: hidden.has(setId) ? recallWords.countedBlind : sentence,
  })),
});
