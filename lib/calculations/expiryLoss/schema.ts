import { z } from 'zod';
import type { Problem } from '@/lib/identity/result';
import { duplicateName } from '@/lib/wording/calculations';
import { expiryLossWords } from '@/lib/wording/expiry-loss';

/** More would take long, and no shelf holds them of one item. */
const MOST_UNITS = 2_000;

const months = z.number().min(0).max(240);

export const expiryLossInput = z.strictObject({
  perMonth: z.number().min(0).max(2_000).nullable().meta({
    title: 'Use',
    description: 'units for each month, on average; null where it is not known',
  }),
  varianceToMean: z.number().min(1).max(50).default(1).meta({
    title: 'Variance to mean',
    description: 'of the units used in a month; 1 is a Poisson distribution, more is negative binomial',
  }),
  lots: z
    .array(
      z.strictObject({
        lot: z.string().min(1).max(60).meta({ title: 'Lot' }),
        units: z.number().int().min(0).max(MOST_UNITS).meta({ title: 'Units' }),
        months: z
          .number()
          .min(-1_200)
          .max(240)
          .nullable()
          .meta({ title: 'Use-by in', description: 'months from now; null where it is not stated' }),
        unitPence: z
          .number()
          .int()
          .min(0)
          .max(100_000_000)
          .nullable()
          .default(null)
          .meta({ title: 'Price', description: 'pence for a unit; null where it is not known' }),
      }),
    )
    .min(1)
    .max(60)
    .meta({ title: 'Lots', description: 'In any order' }),
  casesAtMonths: z
    .array(months)
    .max(60)
    .default([])
    .meta({ title: 'Cases', description: 'months from now at which the lots on offer are asked for' }),
});

const lotLoss = z.strictObject({
  lot: z.string(),
  units: z.number().int(),
  months: z.number(),
  pastUseBy: z.boolean(),
  expectedLost: z.number(),
  /** Units that are more likely to be lost than used. */
  likelyLost: z.number().int(),
  chanceAnyLost: z.number(),
  /** What the average alone would say. */
  pointForecastLost: z.number(),
  expectedLostPence: z.number().int().nullable(),
  sentence: z.string(),
});

export const expiryLossOutput = z.strictObject({
  /** First past use-by first. */
  lots: z.array(lotLoss),
  expectedLost: z.number(),
  pointForecastLost: z.number(),
  /** `null` where a lot that may be lost has no known price. */
  expectedLostPence: z.number().int().nullable(),
  offered: z.array(z.strictObject({ month: z.number(), lots: z.array(z.string()) })),
});

export type ExpiryLossInput = z.output<typeof expiryLossInput>;
export type ExpiryLossOutput = z.output<typeof expiryLossOutput>;
export type LotLoss = z.output<typeof lotLoss>;

/** A lot named twice, and more units than are worked out. */
export function checkExpiryLoss({ lots }: ExpiryLossInput): Problem[] {
  const seen = new Set<string>();
  const problems = lots.flatMap(({ lot }, at): Problem[] => {
    const twice = seen.has(lot);
    seen.add(lot);
    return twice ? [{ path: ['lots', at, 'lot'], code: 'duplicate', message: duplicateName(lot) }] : [];
  });
  const units = lots.reduce((all, one) => all + one.units, 0);
  if (units > MOST_UNITS)
    problems.push({
      path: ['lots'],
      code: 'too-many',
      message: expiryLossWords.tooMany(units, MOST_UNITS),
    });
  return problems;
}
