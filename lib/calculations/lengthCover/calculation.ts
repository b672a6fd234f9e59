import { calculationWords } from '@/lib/wording/calculations';
import { defineCalculation } from '../calculation';
import { lengthCover } from './lengthCover';
import { checkLengthCover, lengthCoverInput, lengthCoverOutput } from './schema';

const spread = { kind: 'spread' as const, meanMm: 20, sdMm: 2 };

export const lengthCoverCalculation = defineCalculation({
  name: 'length-cover',
  ...calculationWords['length-cover'],
  input: lengthCoverInput,
  output: lengthCoverOutput,
  example: {
    holes: ['S1', 'S2', 'S4', 'S5'].map((hole) => ({
      hole,
      family: 'cortical 3.5',
      need: spread,
      rounding: 'nearest' as const,
      acceptLongerMm: 2,
      acceptShorterMm: 0,
    })),
    families: [
      {
        family: 'cortical 3.5',
        lengths: [
          { lengthMm: 14, stock: 0 },
          { lengthMm: 16, stock: 0 },
          { lengthMm: 18, stock: 1 },
          { lengthMm: 20, stock: 2 },
          { lengthMm: 22, stock: 1 },
          { lengthMm: 24, stock: 0 },
          { lengthMm: 26, stock: 0 },
        ],
      },
    ],
    sharedSdMm: null,
    notImplantedChance: 0,
    targetCover: 0.95,
  },
  check: checkLengthCover,
  run: lengthCover,
});
