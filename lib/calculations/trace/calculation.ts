import { traceDescription } from '@/lib/wording/trace';
import { defineCalculation } from '../calculation';
import { checkTrace, traceInput, traceOutput } from './schema';
import { trace } from './trace';

const day = (of: number) => Date.UTC(2026, 0, of);

export const traceCalculation = defineCalculation({
  name: 'trace',
  ...traceDescription,
  input: traceInput,
  output: traceOutput,
  example: {
    lot: 'B',
    events: [
      { kind: 'in', atMs: day(5), quantity: 6, lot: 'A' },
      { kind: 'out', atMs: day(6), quantity: 2, case: 'case 1' },
      { kind: 'in', atMs: day(7), quantity: 2, lot: 'B' },
      { kind: 'out', atMs: day(8), quantity: 3, case: 'case 2' },
      { kind: 'in', atMs: day(9), quantity: 3, lot: 'C' },
      { kind: 'out', atMs: day(12), quantity: 2, case: 'case 3' },
    ],
  },
  check: checkTrace,
  run: trace,
});
