import { z } from 'zod';
import type { HoldingBand } from '../calculations/thermalDose/schema';

/** What a steriliser can run. Whole units: millidegrees Celsius, seconds. */
export const programme = z.strictObject({
  name: z.string().trim().min(1).max(60),
  /** `[lowest, highest]`; the upper end is `null` where none is stated. */
  bandMillicelsius: z.tuple([
    z.number().int().min(50_000).max(200_000),
    z.number().int().min(50_000).max(200_000).nullable(),
  ]),
  holdSeconds: z.number().int().min(1).max(36_000),
});
export type Programme = z.infer<typeof programme>;

export const programmes = z
  .array(programme)
  .min(1, 'a steriliser runs at least one programme')
  .max(20)
  .superRefine((all, context) => {
    for (const [at, { name, bandMillicelsius }] of all.entries()) {
      const [low, high] = bandMillicelsius;
      if (all.findIndex((other) => other.name === name) !== at)
        context.addIssue({ code: 'custom', path: [at, 'name'], message: 'a name used once' });
      if (high !== null && high < low)
        context.addIssue({
          code: 'custom',
          path: [at, 'bandMillicelsius', 1],
          message: 'an upper end that is not below the lower one',
        });
    }
  });

export function bandOf({ bandMillicelsius: [low, high], holdSeconds }: Programme): HoldingBand {
  return { lowC: low / 1000, highC: high === null ? null : high / 1000, holdSeconds };
}
