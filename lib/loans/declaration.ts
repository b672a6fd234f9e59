import { z } from 'zod';
import { personId } from '../identity/ids';

const proven = { by: personId, name: z.string(), at: z.iso.datetime(), method: z.string() };

/** What we declare of a loan as it leaves. A tray nothing was done to here goes as it came; the others are decontaminated. */
export const ourDeclaration = z.object({
  ...proven,
  trays: z.array(z.object({ tray: z.number().int(), how: z.enum(['decontaminated', 'asItCame']) })),
});
export type OurDeclaration = z.infer<typeof ourDeclaration>;

/** Who of us gave it into whose hands. */
export const handedOver = z.object(proven);
export type HandedOver = z.infer<typeof handedOver>;

/** Where a missing piece was last there, or a damaged one last in order. `at` is `null` for what was only ever listed. */
export const lastThereAt = z.object({
  step: z.enum(['list', 'arrivalCount', 'benchCount']),
  at: z.iso.datetime().nullable(),
});
export type LastThere = z.infer<typeof lastThereAt>;
