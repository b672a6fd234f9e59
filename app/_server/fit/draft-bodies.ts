import 'server-only';
import { z } from 'zod';
import { exceptionPart } from '@/lib/fit/draft';
import { fitRule } from '@/lib/fit/rule';

const { code, relation, severity, sentence, source } = fitRule.shape;

/** A drafted rule as it is sent. Conditions hold conditions; `parseRuleDraft` reads them, and tells what is wrong where. */
export const ruleDraftBody = z.object({
  ...{ code, relation, severity, sentence, source },
  appliesWhen: z
    .unknown()
    .optional()
    .describe('A condition, as a rule that is read has it; always, when left out.'),
  requires: z.unknown().describe('A condition, as a rule that is read has it.'),
});

/** A drafted exception as it is sent. */
export const exceptionDraftBody = exceptionPart;
