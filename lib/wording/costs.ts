import type { CaseCostInput } from '../calculations/caseCost/schema';
import type { DelayGroup, WasteGroup } from '../costs/reasonGroups';
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
  /** @param cases which a set went to that the reader counts blind */
  leftOutBlind: (cases: number) =>
    `${cases} ${cases === 1 ? 'case is' : 'cases are'} left out here and in the files: a set you count went to ${cases === 1 ? 'it' : 'them'}, and what was used of it is not shown to you until you have closed your count.`,
  tables: {
    months: 'Cost by month',
    reasons: 'Waste by what became of it',
    procedures: 'Cost by procedure',
    sets: 'Cost by set',
    cases: 'Cost by case',
  },
  reasonTables: {
    wasteReasons: 'Waste by reason',
    wasteReasonsByProcedure: 'Waste by procedure and reason',
    wasteReasonsBySet: 'Waste by set and reason',
    wasteReasonsByCase: 'Waste by case and reason',
    writtenOff: 'Written off from the shelf by reason',
    delayReasons: 'Delay by reason',
    delaysByProcedure: 'Delay by procedure',
    delaysBySet: 'Delay by set',
    delaysByCase: 'Delay by case',
  },
  parts: COST_PART_WORDS,
  wasteShare: (of: CaseCostInput['wasteShareOf']) => WASTE_SHARE_WORDS[of],
  noProcedure: (region: string) => `${region}, procedure not stated`,
  chart: (months: number) =>
    `Cost of cases by month over ${months} ${months === 1 ? 'month' : 'months'}, each month stacked from the parts named below it.`,
};

const counted = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;
const inMinutes = (value: number): string => String(Math.round(value * 10) / 10);

/** The words of waste and delay by the hospital's own reasons. */
export const reasonReportWords = {
  labels: {
    waste: 'Waste by reason',
    writtenOff: 'Written off from the shelf by reason',
    delay: 'Delay by reason, minutes in all',
    delayByProcedure: 'Delay by procedure, minutes in all',
    delayBySet: 'Delay by set, minutes in all',
    own: 'Why pieces were wasted in your own cases',
  },
  notStated: (share: number | null) =>
    share === null || share === 0
      ? 'Of every wasted piece the reason is stated.'
      : `Of ${(share * 100).toFixed(1)} % of the wasted pieces the reason is not stated: what is stated may not be typical of them.`,
  tooFew: 'fewer than five are stated: too few to say',
  quarters: ({ lowerMinutes, upperMinutes }: DelayGroup) =>
    lowerMinutes === null || upperMinutes === null
      ? 'too few to say'
      : `half of them between ${inMinutes(lowerMinutes)} and ${inMinutes(upperMinutes)} minutes`,
  wasteNote: ({ pieces, cases, unknown }: WasteGroup) =>
    [
      counted(pieces, 'piece', 'pieces'),
      ...(cases > 0 ? [`in ${counted(cases, 'case', 'cases')}`] : []),
      ...(unknown > 0 ? [`${unknown} of them without a price`] : []),
    ].join(', '),
  delayNote: ({ delays, stated, medianMinutes, noReason, key }: DelayGroup) =>
    [
      counted(delays, 'delay', 'delays'),
      ...(stated < delays ? [`${delays - stated} without minutes`] : []),
      medianMinutes === null ? 'too few to say what is usual' : `half under ${inMinutes(medianMinutes)} min`,
      ...(noReason > 0 && key !== '' ? [`${noReason} without a reason`] : []),
    ].join('; '),
  ownDelays: (own: DelayGroup, others: DelayGroup | null) =>
    `${own.delays === 0 ? 'No delay is recorded in your own cases' : `${counted(own.delays, 'delay', 'delays')} in your own cases, ${own.stated === 0 ? 'minutes not stated' : `${own.minutes} minutes in all`}`}. ${
      others === null
        ? 'Too few of others to set beside them.'
        : `All others together: ${counted(others.delays, 'delay', 'delays')}, ${others.stated === 0 ? 'minutes not stated' : `${others.minutes} minutes in all`}${others.medianMinutes === null ? '' : `, half under ${inMinutes(others.medianMinutes)} min`}.`
    }`,
};
