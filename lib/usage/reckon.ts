import type { Construct } from '../plans/plan';
import { accountOfUse, type SourceAccount, type TableSource } from './account';
import type { UseEntry } from './act';
import { type PlanDifference, planDifferences, type UsedItem } from './differences';
import { type QuestionFacts, questionsOf, type UseQuestion } from './questions';
import { stateOfUse, type UseState } from './state';

export interface UseSubject extends Pick<QuestionFacts, 'countQuestions' | 'unopenedSets' | 'asksReason'> {
  /** Slots of the sets at the table, then single packs issued. */
  sources: readonly TableSource[];
  /** The confirmed plan; `null`: there is none to hold it against. */
  construct: Construct | null;
}

export interface UseReckoned {
  state: UseState;
  accounts: SourceAccount[];
  differences: PlanDifference[];
  questions: UseQuestion[];
}

/** What the entries of a record come to: its account, how it differs from the plan, and what is open. */
export function reckonUse(
  { sources, construct, countQuestions, unopenedSets, asksReason }: UseSubject,
  entries: Iterable<UseEntry>,
  itemOf: (itemId: string) => UsedItem | null,
): UseReckoned {
  const state = stateOfUse(entries);
  const accounts = accountOfUse(sources, state);
  const differences = construct ? planDifferences(construct, state.pieces, itemOf) : [];
  const questions = questionsOf({
    sources,
    accounts,
    differences,
    countQuestions,
    unopenedSets,
    pieces: state.pieces,
    asksReason,
  });
  return { state, accounts, differences, questions };
}
