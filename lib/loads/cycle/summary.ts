import { z } from 'zod';
import {
  DEFAULT_F0_REFERENCE_C,
  DEFAULT_LONGEST_GAP_SECONDS,
} from '../../calculations/thermalDose/published';
import { type ThermalDoseInput, thermalDoseOutput } from '../../calculations/thermalDose/schema';
import { thermalDose } from '../../calculations/thermalDose/thermalDose';
import { bandOf, type Programme, programme } from '../programme';
import type { CycleReading } from './readCycle';

/** What is kept of an imported cycle beside its readings. */
export const cycleSummary = z.object({
  programme,
  readings: z.number().int(),
  loggedFromSecond: z.number(),
  loggedToSecond: z.number(),
  rule: z.enum(['trapezoid', 'left']),
  longestGapSeconds: z.number(),
  /** What is missing for the sums to be established, in words; empty where nothing is. */
  missing: z.array(z.string()),
  /** As far as it is known; the least they can be where something is missing. */
  dose: thermalDoseOutput.nullable(),
  importedBy: z.string(),
  importedAt: z.string(),
  fileName: z.string().nullable(),
  /** How the file was understood. */
  understood: z.array(z.string()),
});
export type CycleSummary = z.infer<typeof cycleSummary>;

/** The input of `thermal-dose` for a cycle run with a programme. */
export function doseInputOf(readings: readonly CycleReading[], ran: Programme): ThermalDoseInput {
  return {
    readings: readings.map(({ second, millicelsius }) => ({ second, celsius: millicelsius / 1000 })),
    rule: 'trapezoid',
    f0ReferenceC: DEFAULT_F0_REFERENCE_C,
    longestGapSeconds: DEFAULT_LONGEST_GAP_SECONDS,
    band: bandOf(ran),
  };
}

export function summarise(
  readings: readonly CycleReading[],
  ran: Programme,
  imported: Pick<CycleSummary, 'importedBy' | 'importedAt' | 'fileName' | 'understood'>,
): CycleSummary {
  const input = doseInputOf(readings, ran);
  const answer = thermalDose(input);
  return {
    programme: ran,
    readings: readings.length,
    loggedFromSecond: readings[0]?.second ?? 0,
    loggedToSecond: readings.at(-1)?.second ?? 0,
    rule: input.rule,
    longestGapSeconds: input.longestGapSeconds,
    missing: answer.outcome === 'answered' ? [] : answer.missing.map(({ what }) => what),
    dose: answer.outcome === 'answered' ? answer.answer : answer.known,
    ...imported,
  };
}

/** Whether the record shows that the programme was kept: never `kept` while what decides it is not known. */
export type CycleOutcome = 'kept' | 'notKept' | 'notEstablished';

export function cycleOutcome(cycle: Pick<CycleSummary, 'dose'> | null): CycleOutcome {
  switch (cycle?.dose?.holding?.outcome) {
    case 'held':
      return 'kept';
    case 'notHeld':
      return 'notKept';
    default:
      return 'notEstablished';
  }
}
