import type { Finding } from '@/lib/fit/finding';
import type { Question } from '@/lib/fit/question';

/** One row of a rule's table: what is asked, what the rule says of it, and why that is right. */
export interface RuleCase {
  rule: string;
  /** `met`: fits · `notMet`: does not fit · `missing`: not established · `silent`: the rule does not apply. */
  says: Finding['answer'] | 'silent';
  why: string;
  ask: Question;
  /** For `missing`: exactly these facts. */
  missing?: string[];
}

/** The catalogue's schema never lets this value be missing; should it be all the same, no rule may guess. */
export const neverStated = null as never;
