import type { WorkingStep } from '@/lib/calculations/calculation';
import type {
  CaseCostInput,
  CaseCostOutput,
  CostPart,
  WasteReason,
} from '@/lib/calculations/caseCost/schema';
import { writePence } from '@/lib/quantities/money';
import type { CalculationWords } from './calculations';
import { percentWord } from './numbers';

export const caseCostDescription: CalculationWords = {
  title: 'Cost of a case',
  question: 'What did the things of this case cost, and how much of it was opened for nothing?',
  formula: [
    'Cost = implanted + wasted + trays × rate of one turn + pouches + single use + loans',
    'Share of waste = wasted ÷ (implanted + wasted), or wasted ÷ cost, as stated',
  ],
  assumptions: [
    'Prices are those on the day a piece was moved; a later price changes nothing.',
    'Wasted: opened and not implanted, dropped or damaged, past use-by.',
    'A price that is not known is not nothing: the cost is then at least what is known.',
    'Staff, theatre time and buildings are not in it.',
  ],
  sources: [
    { text: 'What is counted as waste, and the share’s definition: local policy, stated beside the figure' },
    { text: 'Prices: the catalogue; rates of a tray, a pouch and a loan: the hospital’s settings' },
  ],
};

export const COST_PART_WORDS: Record<CostPart, string> = {
  implanted: 'Implanted',
  wasted: 'Wasted',
  trays: 'Trays',
  pouches: 'Pouches',
  singleUse: 'Single use',
  loans: 'Loans',
};

const WASTE_REASON_WORDS: Record<WasteReason, string> = {
  openedNotImplanted: 'opened, not implanted',
  droppedOrDamaged: 'dropped or damaged',
  pastUseBy: 'past use-by',
  other: 'another reason',
};

export const WASTE_SHARE_WORDS: Record<CaseCostInput['wasteShareOf'], string> = {
  opened: 'wasted ÷ (implanted + wasted)',
  total: 'wasted ÷ cost of the case',
};

export const caseCostWords = {
  priceMissing: (item: string) => `the price of ${item}`,
  working(answer: CaseCostOutput): WorkingStep[] {
    const parts: CostPart[] = ['implanted', 'wasted', 'trays', 'pouches', 'singleUse', 'loans'];
    return [
      ...parts.map((part) => ({
        label: COST_PART_WORDS[part],
        expression:
          answer[part].unknown === 0
            ? 'Σ quantity × price'
            : `Σ of what is known; ${answer[part].unknown} without a price`,
        value: writePence(answer[part].pence),
      })),
      ...answer.wasteBy.map(({ why, pence }) => ({
        label: 'of the waste',
        expression: WASTE_REASON_WORDS[why],
        value: writePence(pence),
      })),
      { label: 'Cost', expression: 'sum of these', value: writePence(answer.totalPence) },
      {
        label: 'Share of waste',
        expression: WASTE_SHARE_WORDS[answer.wasteShareOf],
        value: answer.wasteShare === null ? 'not established' : percentWord(answer.wasteShare),
      },
    ];
  },
};
