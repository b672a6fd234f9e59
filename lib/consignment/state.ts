import { z } from 'zod';

/** From made to approved to sent; or withdrawn before it was sent. */
export const usageOrderState = z.enum(['made', 'approved', 'sent', 'withdrawn']);
export type UsageOrderState = z.infer<typeof usageOrderState>;
