import type { CaseCostInput } from '../calculations/caseCost/schema';
import { COST_PART_WORDS, WASTE_SHARE_WORDS } from './case-cost';
import { MONTHS } from './sets';

/** Why a piece was wasted, as the journal of pieces has it; a word of the hospital’s own stands as it is. */
const WASTE_CODE_WORDS: Readonly<Record<string, string>> = {
  otherLength: 'another length was needed',
  openedNotImplanted: 'opened, not implanted',
  dropped: 'dropped',
  damaged: 'damaged',
  droppedOrDamaged: 'dropped or damaged',
  packDamaged: 'its pack was damaged',
  pastUseBy: 'past use-by',
  notStated: 'not stated',
};

export const wasteCodeWords = (code: string): string => WASTE_CODE_WORDS[code] ?? code;

/** `2026-03 → 'Mar 26'`. */
export function monthWords(month: string): string {
  return `${MONTHS[Number(month.slice(5, 7)) - 1]} ${month.slice(2, 4)}`;
}

export const costsWords = {
  tables: {
    months: 'Cost by month',
    reasons: 'Waste by reason',
    procedures: 'Cost by procedure',
    sets: 'Cost by set',
    cases: 'Cost by case',
  },
  parts: COST_PART_WORDS,
  wasteShare: (of: CaseCostInput['wasteShareOf']) => WASTE_SHARE_WORDS[of],
  noProcedure: (region: string) => `${region}, procedure not stated`,
  chart: (months: number) =>
    `Cost of cases by month over ${months} ${months === 1 ? 'month' : 'months'}, each month stacked from the parts named below it.`,
};
