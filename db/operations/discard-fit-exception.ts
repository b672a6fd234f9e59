import type { Result } from '@/lib/identity/result';
import { discardDraft, type FitRequest } from './fit-lifecycle';

/** Throws a drafted exception away; the ledger keeps it. */
export function discardFitException(request: FitRequest): Promise<Result<null>> {
  return discardDraft('fit-exception', request);
}
