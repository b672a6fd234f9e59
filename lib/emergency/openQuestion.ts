import { z } from 'zod';

/**
 * What an emergency leaves open: the plan, which a surgeon confirms; the count of what went; and, of a set that went although its
 * record was against it, how that stands.
 */
export const emergencyQuestionKind = z.enum(['plan', 'count', 'againstRecord']);
export type EmergencyQuestionKind = z.infer<typeof emergencyQuestionKind>;
