import type { Result } from '@/lib/identity/result';
import { discardDraft, type FitRequest } from './fit-lifecycle';

/** Throws a drafted rule away; the ledger keeps it. */
export function discardFitRule(request: FitRequest): Promise<Result<null>> {
  return discardDraft('fit-rule', request);
}
