import type { PieceCondition } from '../sets/setState';
import { CONDITION_WORDS } from './sets';

/** At which step pieces were seen to be gone, as the journal of pieces has it. */
const NOT_FOUND_STEP_WORDS: Readonly<Record<string, string>> = {
  bench: 'at the count on the bench',
  theatre: 'in theatre',
  shelf: 'at the count of the shelf',
  comingBack: 'coming back',
  atOpening: 'at opening',
  during: 'during the case',
  atCount: 'at the count in theatre',
};

export const notFoundStepWords = (step: string | null): string =>
  step === null ? 'at a step not stated' : (NOT_FOUND_STEP_WORDS[step] ?? step);

export const unfitWords = (condition: string | null): string =>
  condition === null ? 'not stated' : (CONDITION_WORDS[condition as PieceCondition] ?? condition);

export const lossWords = {
  tables: {
    shelf: 'What to use or swap first',
    shelfWaste: 'Thrown away on the shelf',
    notFound: 'Where pieces vanish',
    repairs: 'What was put aside as unfit',
    life: 'How far limits are used up',
  },
  notFoundFrom: (set: string | null) => set ?? 'single packs and shelves',
  neverUsed: (months: number) => `Nothing left this shelf in ${months} months.`,
};
