import { calculationWords } from '@/lib/wording/calculations';
import { defineCalculation } from '../calculation';
import { plateRemarks } from './plateRemarks';
import { checkPlateRemarks, plateRemarksInput, plateRemarksOutput } from './schema';

const empty = { fill: 'empty' as const, cortices: null, threadMm: null, tip: null };
const locking = {
  fill: 'locking' as const,
  cortices: 2 as const,
  threadMm: 3.5,
  tip: 'selfTapping' as const,
};

export const plateRemarksCalculation = defineCalculation({
  name: 'plate-remarks',
  ...calculationWords['plate-remarks'],
  input: plateRemarksInput,
  output: plateRemarksOutput,
  example: {
    bone: 'poor',
    plates: [
      {
        plate: 'P1',
        plateLengthMm: 137,
        zone: { fromMm: 55, toMm: 85 },
        principle: 'bridging',
        holes: [
          { hole: 'S1', alongMm: 10, ...locking },
          { hole: 'S2', alongMm: 23, ...empty },
          { hole: 'S3', alongMm: 36, ...locking, cortices: 1, tip: 'selfDrillingSelfTapping' },
          { hole: 'S4', alongMm: 49, fill: 'plain', cortices: 2, threadMm: 3.5, tip: 'selfTapping' },
          { hole: 'S5', alongMm: 62, ...empty },
          { hole: 'S6', alongMm: 75, ...empty },
          { hole: 'S7', alongMm: 88, ...locking },
          { hole: 'S8', alongMm: 101, ...empty },
          { hole: 'S9', alongMm: 114, ...locking },
          { hole: 'S10', alongMm: 127, ...locking },
        ],
      },
    ],
    off: [],
  },
  check: checkPlateRemarks,
  run: plateRemarks,
});
