import { z } from 'zod';

/** A form as sent: flat texts. Longer texts than any field allows are still let through, to be refused beside the field. */
export const draftMember = z
  .record(z.string().max(80), z.string().max(50_000))
  .refine((draft) => Object.keys(draft).length <= 2_000, 'too many fields');
