import type { Result } from '@/lib/identity/result';
import { type FitRequest, keep } from './fit-lifecycle';

/** Turns the withdrawal of a rule down: it stays in force. */
export function keepFitRule(request: FitRequest): Promise<Result<null>> {
  return keep('fit-rule', request);
}
