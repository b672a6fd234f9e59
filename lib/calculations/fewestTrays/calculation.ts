import { kitCalculationWords } from '@/lib/wording/kit-calculations';
import { defineCalculation } from '../calculation';
import { fewestTrays } from './fewestTrays';
import { checkFewestTrays, fewestTraysInput, fewestTraysOutput } from './schema';

export const fewestTraysCalculation = defineCalculation({
  name: 'fewest-trays',
  ...kitCalculationWords['fewest-trays'],
  input: fewestTraysInput,
  output: fewestTraysOutput,
  example: {
    lines: ['pilot bit', 'sleeve', 'gauge', 'driver', 'handle', 'plate'].map((item) => ({
      line: item,
      need: { kind: 'anyOf' as const, items: [item] },
    })),
    sets: [
      { set: 'A', holds: ['pilot bit', 'sleeve', 'gauge', 'driver'].map((item) => ({ item, pieces: 1 })) },
      { set: 'B', holds: ['pilot bit', 'gauge', 'handle'].map((item) => ({ item, pieces: 1 })) },
      { set: 'C', holds: ['sleeve', 'driver', 'plate'].map((item) => ({ item, pieces: 1 })) },
    ],
  },
  check: checkFewestTrays,
  run: fewestTrays,
});
