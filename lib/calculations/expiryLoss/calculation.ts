import { expiryLossDescription } from '@/lib/wording/expiry-loss';
import { defineCalculation } from '../calculation';
import { expiryLoss } from './expiryLoss';
import { checkExpiryLoss, expiryLossInput, expiryLossOutput } from './schema';

export const expiryLossCalculation = defineCalculation({
  name: 'expiry-loss',
  ...expiryLossDescription,
  input: expiryLossInput,
  output: expiryLossOutput,
  example: {
    perMonth: 0.5,
    lots: [
      { lot: 'LM-2207', units: 4, months: 6, unitPence: 3_800 },
      { lot: 'LM-2311', units: 6, months: 18, unitPence: 3_800 },
    ],
    casesAtMonths: [5, 7],
  },
  check: checkExpiryLoss,
  run: expiryLoss,
});
