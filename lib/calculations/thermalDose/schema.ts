import { z } from 'zod';
import { DEFAULT_F0_REFERENCE_C, DEFAULT_LONGEST_GAP_SECONDS } from './published';

const celsius = z.number().min(-50).max(400);
const seconds = z.number().min(0).max(1_000_000);

export const holdingBand = z.strictObject({
  lowC: celsius.meta({ title: 'Lowest', description: 'degrees Celsius, itself in the band' }),
  highC: celsius.nullable().meta({ title: 'Highest', description: 'null where no upper end is stated' }),
  holdSeconds: seconds.meta({ title: 'Holding time', description: 'seconds' }),
});

export const thermalDoseInput = z.strictObject({
  readings: z
    .array(
      z.strictObject({
        second: seconds.meta({ title: 'At', description: 'seconds since the log began' }),
        celsius: celsius
          .nullable()
          .meta({ title: 'Temperature', description: 'degrees Celsius; null where the log has none' }),
      }),
    )
    .min(1)
    .max(30_000)
    .meta({ title: 'Readings', description: 'In the order they were logged' }),
  rule: z.enum(['trapezoid', 'left']).default('trapezoid').meta({
    title: 'Rule',
    description: 'How the time between two readings is counted: the mean of both ends, or the earlier one',
  }),
  f0ReferenceC: celsius
    .default(DEFAULT_F0_REFERENCE_C)
    .meta({ title: 'Reference temperature of F0', description: '121.1 or 121 °C' }),
  longestGapSeconds: seconds.default(DEFAULT_LONGEST_GAP_SECONDS).meta({
    title: 'Longest time between readings',
    description: 'seconds; a longer one is a gap, and nothing is said about it',
  }),
  band: holdingBand.nullable().default(null).meta({
    title: 'Band and holding time',
    description: 'null where no programme is named',
  }),
});

const holding = z.strictObject({
  outcome: z.enum(['held', 'notHeld', 'notEstablished']),
  longestSeconds: z.number(),
  requiredSeconds: z.number(),
  fromSecond: z.number().nullable(),
  toSecond: z.number().nullable(),
  lowestC: z.number().nullable(),
  highestC: z.number().nullable(),
});

export const thermalDoseOutput = z.strictObject({
  a0Seconds: z.number(),
  f0Minutes: z.number(),
  f0ReferenceC: z.number(),
  loggedSeconds: z.number(),
  lowestC: z.number(),
  highestC: z.number(),
  /** `null` where no band was given. */
  holding: holding.nullable(),
});

export type ThermalDoseInput = z.output<typeof thermalDoseInput>;
export type ThermalDoseOutput = z.output<typeof thermalDoseOutput>;
export type HoldingBand = z.output<typeof holdingBand>;
export type Holding = z.output<typeof holding>;
