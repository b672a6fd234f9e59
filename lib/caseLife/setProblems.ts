import type { Problem } from '../identity/result';
import { type SendFacts, sendProblems } from '../turns/send';
import { pickWords as words } from '../wording/case-life';

/** What decides whether a set may be picked for a case, besides what decides whether it may go to theatre. */
export interface SetPickFacts extends SendFacts {
  outOfService: boolean;
  /** The pack in the hand is not the one the set is in. */
  otherPack: boolean;
}

/** Everything that keeps a set from being picked, at once: what keeps it from theatre, and what keeps it from this kit. */
export function setPickProblems(facts: SetPickFacts): Problem[] {
  const problems: Problem[] = [];
  const add = (code: string, message: string) => problems.push({ path: [], code, message });
  if (facts.outOfService) add('out-of-service', words.outOfService(facts.code));
  if (facts.otherPack) add('other-pack', words.packOfOther(facts.code));
  return [...problems, ...sendProblems(facts)];
}
