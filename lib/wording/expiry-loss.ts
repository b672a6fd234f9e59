import type { WorkingStep } from '@/lib/calculations/calculation';
import type { ExpiryLossOutput, LotLoss } from '@/lib/calculations/expiryLoss/schema';
import type { CalculationWords } from './calculations';
import { percentWord } from './numbers';

export const expiryLossDescription: CalculationWords = {
  title: 'Expiry loss',
  question:
    'How many units of these lots will pass their use-by on the shelf, and what should be used or swapped first?',
  formula: [
    'Lots in the order of their use-by; D(T) the units asked for until T',
    'Lost of a lot = E[(units of the lots up to it − units lost before − D(T))⁺]',
    'Units more likely lost than used = the most k with P(lost ≥ k) > ½',
  ],
  assumptions: [
    'First expired first out; nothing is added to the shelf.',
    'What is asked for in one stretch does not depend on another; the average stays as it is.',
    'A Poisson distribution, or where the variance stated is above the mean a negative binomial one.',
    'On the day of its use-by a unit may still be used; past it, it is never offered.',
    'A lot without a use-by has no place in the order: it is left out, and what is lost is then at least this.',
  ],
  sources: [
    { text: 'Poisson distribution: any handbook of statistics; the expectation is worked out exactly' },
    { text: 'First expired first out: common practice, no source' },
  ],
};

/** `1.32 → '1.3'`; what is almost nothing is called so. */
export function unitsWord(units: number): string {
  if (units === 0) return '0';
  return units < 0.05 ? 'under 0.1' : units.toFixed(1);
}

export const expiryLossWords = {
  useMissing: 'how many units are used in a month',
  dateMissing: (lot: string) => `the use-by of lot ${lot}`,
  tooMany: (units: number, most: number) =>
    `${units} units: at most ${most} are worked out at once; leave out the lots that end last.`,
  sentence({ units, pastUseBy, likelyLost, chanceAnyLost }: Omit<LotLoss, 'sentence'>): string {
    if (units === 0) return 'Nothing is left of it.';
    if (pastUseBy)
      return units === 1
        ? 'Past use-by: not to be used.'
        : `Past use-by: none of the ${units} is to be used.`;
    if (likelyLost > 0)
      return `Use it first, or offer ${likelyLost === units ? 'it' : `${likelyLost} of ${units}`} to somebody who uses more: ${
        likelyLost === 1 ? 'one unit is' : `${likelyLost} units are`
      } more likely to be lost than used.`;
    return chanceAnyLost < 0.05
      ? 'Likely to be used in time.'
      : `Use it first: the chance that some of it is lost is ${percentWord(chanceAnyLost, 0)}.`;
  },
  working({ lots, expectedLost }: ExpiryLossOutput, perMonth: number): WorkingStep[] {
    return [
      ...lots.map(({ lot, units, months, expectedLost: lost }) => ({
        label: `Lot ${lot}`,
        expression: `${units} units, use-by in ${Number(months.toFixed(2))} months; ${perMonth} asked for a month`,
        value: `${lost.toFixed(2)} lost`,
      })),
      { label: 'Together', expression: 'Σ', value: expectedLost.toFixed(2) },
    ];
  },
};
