import { caseCostDescription } from '@/lib/wording/case-cost';
import { defineCalculation } from '../calculation';
import { caseCost } from './caseCost';
import { caseCostInput, caseCostOutput } from './schema';

export const caseCostCalculation = defineCalculation({
  name: 'case-cost',
  ...caseCostDescription,
  input: caseCostInput,
  output: caseCostOutput,
  example: {
    implanted: [
      { item: 'Narrow plate, 8 holes', unitPence: 14_500 },
      { item: 'Cortical screw 3.5', quantity: 4, unitPence: 1_200 },
      { item: 'Locking screw 3.5', quantity: 2, unitPence: 3_800 },
    ],
    wasted: [
      { item: 'Cortical screw 3.5 × 18', unitPence: 1_200 },
      { item: 'Locking screw 3.5 × 20', unitPence: 3_800, why: 'droppedOrDamaged' },
    ],
    trays: [{ item: 'Small fragment set', quantity: 2, unitPence: 3_500 }],
    pouches: [{ item: 'Pointed forceps', unitPence: 600 }],
    singleUse: [{ item: 'Drapes and blades', unitPence: 2_800 }],
  },
  run: caseCost,
});
