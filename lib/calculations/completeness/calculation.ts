import { calculationWords } from '@/lib/wording/calculations';
import { defineCalculation } from '../calculation';
import { checkCompleteness, completeness, completenessInput, completenessOutput } from './completeness';

export const completenessCalculation = defineCalculation({
  name: 'completeness',
  ...calculationWords.completeness,
  input: completenessInput,
  output: completenessOutput,
  example: {
    lines: [
      {
        line: 'Screw rack 3.5, 16',
        item: 'cortical screw 3.5 × 16',
        mustHaveClass: 2,
        expected: 6,
        minimum: 2,
        found: 4,
        massGrams: 1,
      },
      {
        line: 'Drill bits, slot 1',
        item: 'pilot bit 2.5',
        mustHaveClass: 2,
        expected: 2,
        minimum: 2,
        found: 1,
        massGrams: 12,
        substitutes: ['pilot bit 2.5, long'],
      },
      {
        line: 'Drill bits, slot 2',
        item: 'pilot bit 2.5, long',
        mustHaveClass: 3,
        expected: 1,
        minimum: 0,
        found: 1,
        massGrams: 15,
      },
      {
        line: 'Sleeves, slot 1',
        item: 'sleeve 2.5/3.5',
        mustHaveClass: 1,
        expected: 1,
        minimum: 1,
        found: 0,
        massGrams: 60,
      },
      {
        line: 'Forceps',
        item: 'pointed forceps',
        mustHaveClass: 4,
        expected: 2,
        minimum: 0,
        found: 2,
        massGrams: null,
      },
    ],
    pouches: [],
    containerGrams: 4200,
    massLimitsGrams: [7000, 10_000, 11_340],
    warnAtPercent: 90,
  },
  check: checkCompleteness,
  run: completeness,
});
