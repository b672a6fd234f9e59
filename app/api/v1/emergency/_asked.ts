import { z } from 'zod';

/** The answers of an emergency as they stand in the address of its screen; what is none is left unanswered. */
export const askedQuery = {
  case: z.string().max(80).optional().describe('A case that is on the list already.'),
  region: z.string().max(20).optional().describe('Where, where it is for no case of the list.'),
  side: z.string().max(20).optional().describe('left or right.'),
  plan: z.string().max(80).optional().describe('A saved start, a plan, or unknown.'),
  by: z.string().max(40).optional().describe('When its sets are needed, as an instant.'),
  theatre: z.string().max(80).optional(),
  surgeon: z.string().max(80).optional(),
  gone: z
    .string()
    .max(40)
    .optional()
    .describe('When the sets went to theatre, where they have gone already.'),
  take: z.string().max(200).optional().describe('Codes of the sets to take, with commas between them.'),
};
