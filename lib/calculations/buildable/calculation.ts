import { kitCalculationWords } from '@/lib/wording/kit-calculations';
import { defineCalculation } from '../calculation';
import { buildable } from './buildable';
import { buildableInput, buildableOutput, checkBuildable } from './schema';

export const buildableCalculation = defineCalculation({
  name: 'buildable',
  ...kitCalculationWords.buildable,
  input: buildableInput,
  output: buildableOutput,
  example: {
    steps: [
      { step: 'S1', piece: ['cortical 3.5 × 16'], chains: ['drill 2.5'] },
      { step: 'S2', piece: ['cortical 3.5 × 16', 'cortical 3.5 × 18'], chains: ['drill 2.5'] },
    ],
    chains: [
      {
        chain: 'drill 2.5',
        slots: [
          { slot: 'pilot bit', items: ['bit 2.5'] },
          { slot: 'sleeve', items: ['sleeve 2.5/3.5', 'sleeve 2.7'] },
        ],
        links: [
          {
            slots: [0, 1],
            pairs: [
              { first: 'bit 2.5', second: 'sleeve 2.5/3.5', outcome: 'fits' },
              {
                first: 'bit 2.5',
                second: 'sleeve 2.7',
                outcome: 'doesNotFit',
                reason: 'The 2.7 bore is loose for 2.5.',
              },
            ],
          },
        ],
      },
    ],
    contents: [
      { item: 'bit 2.5', pieces: 2 },
      { item: 'sleeve 2.5/3.5', pieces: 0, unsound: 1 },
      { item: 'cortical 3.5 × 16', pieces: 1 },
      { item: 'cortical 3.5 × 18', pieces: 2 },
    ],
    pouches: [{ item: 'sleeve 2.5/3.5', pieces: 1 }],
  },
  check: checkBuildable,
  run: buildable,
});
