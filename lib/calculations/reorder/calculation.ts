import { calculationWords } from '@/lib/wording/calculations';
import { defineCalculation } from '../calculation';
import { reorder } from './reorder';
import { checkReorder, reorderInput, reorderOutput } from './schema';

/** A plain shelf line: two a week, a week to come, looked at once a week. */
export const reorderCalculation = defineCalculation({
  name: 'reorder',
  ...calculationWords.reorder,
  input: reorderInput,
  output: reorderOutput,
  example: {
    demand: { kind: 'stated', piecesPerWeek: 2 },
    leadDays: 7,
    reviewDays: 7,
    service: 0.95,
    lots: [{ pieces: 3, daysLeft: 400 }],
    onOrder: 2,
    committed: 2,
    packOf: 5,
    shelfLifeDays: 1_095,
  },
  check: checkReorder,
  run: reorder,
});
