import type { Result } from '@/lib/identity/result';
import { keep, type FitRequest } from './fit-lifecycle';

/** Turns the withdrawal of a rule down: it stays in force. */
export function keepFitRule(request: FitRequest): Promise<Result<null>> {
  return keep('fit-rule', request);
}
