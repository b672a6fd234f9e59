import type { ReachedCase, RecallReach, SeenCase } from '@/lib/trace/recall';
import { recallWords } from '@/lib/wording/recall';

/** What a recall reaches, as a reader may see it. */
export interface ReachSeen extends Omit<RecallReach, 'sets' | 'cases'> {
  cases: SeenCase[];
  /** `pieces` is `null` where the reader counts that set, and is not to see what lies in it. */
  sets: { setId: string; pieces: number | null }[];
}

/** Leaves out what a case had where a set went to it that the reader counts blind; that it is reached is no secret. */
export const caseSeen = (one: ReachedCase, blindTo: ReadonlySet<string>): SeenCase =>
  blindTo.has(one.caseId) ? { ...one, lo: null, hi: null, reasons: [recallWords.caseBlind] } : one;

/**
 * Leaves out every figure of sets the reader counts blind, and of cases they went to.
 *
 * @param cases of a lot or an item; where packs are told, as of a set or a load, none are hidden
 */
export const reachSeen = (
  reach: RecallReach,
  { sets: hidden, cases }: { sets: ReadonlySet<string>; cases: ReadonlySet<string> },
): ReachSeen => ({
  ...reach,
  cases: reach.cases.map((one) => caseSeen(one, cases)),
  sets: reach.sets.map(({ setId, pieces }) => ({ setId, pieces: hidden.has(setId) ? null : pieces })),
  contradictions: reach.contradictions.map(({ setId, sentence }) => ({
    setId,
    sentence: hidden.has(setId) ? recallWords.countedBlind : sentence,
  })),
});
