import { calculationWords } from '@/lib/wording/calculations';
import { defineCalculation } from '../calculation';
import { thermalDoseInput, thermalDoseOutput } from './schema';
import { checkThermalDose, thermalDose } from './thermalDose';

/** Up in two minutes, three and a half at 134.6 °C, and down: one reading every ten seconds. */
const rise = [20, 42, 63, 80, 95, 104, 112, 119, 125, 129, 132, 133.8];
const fall = [128, 118, 104, 92, 81];
const example = [...rise, ...Array.from({ length: 22 }, () => 134.6), ...fall];

export const thermalDoseCalculation = defineCalculation({
  name: 'thermal-dose',
  ...calculationWords['thermal-dose'],
  input: thermalDoseInput,
  output: thermalDoseOutput,
  example: {
    readings: example.map((celsius, at) => ({ second: at * 10, celsius })),
    rule: 'trapezoid',
    f0ReferenceC: 121.1,
    longestGapSeconds: 10,
    band: { lowC: 134, highC: 137, holdSeconds: 180 },
  },
  check: checkThermalDose,
  run: thermalDose,
});
