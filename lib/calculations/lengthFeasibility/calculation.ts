import { calculationWords } from '@/lib/wording/calculations';
import { defineCalculation } from '../calculation';
import { checkScrews } from '../screwStock';
import { lengthFeasibility, lengthFeasibilityInput, lengthFeasibilityOutput } from './lengthFeasibility';

export const lengthFeasibilityCalculation = defineCalculation({
  name: 'length-feasibility',
  ...calculationWords['length-feasibility'],
  input: lengthFeasibilityInput,
  output: lengthFeasibilityOutput,
  example: {
    holes: [
      { hole: 'A', family: 'cortical 3.5', acceptedMm: [16] },
      { hole: 'B', family: 'cortical 3.5', acceptedMm: [16, 18] },
      { hole: 'C', family: 'cortical 3.5', acceptedMm: [18] },
      { hole: 'D', family: 'cortical 3.5', acceptedMm: [20] },
    ],
    families: [
      {
        family: 'cortical 3.5',
        lengths: [
          { lengthMm: 14, stock: 2 },
          { lengthMm: 16, stock: 1 },
          { lengthMm: 18, stock: 1 },
          { lengthMm: 20, stock: 3 },
        ],
      },
    ],
  },
  check: checkScrews,
  run: lengthFeasibility,
});
