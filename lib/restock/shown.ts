import { z } from 'zod';
import { reorderOutput } from '@/lib/calculations/reorder/schema';

/** What a line of a proposal keeps of its calculation, as it is read back. */
export const keptAnswer = reorderOutput.nullable();
export const keptWorking = z.array(
  z.strictObject({ label: z.string(), expression: z.string(), value: z.string() }),
);
export const keptMissing = z.array(z.string());
