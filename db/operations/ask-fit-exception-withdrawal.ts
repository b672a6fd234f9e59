import type { Result } from '@/lib/identity/result';
import { askWithdrawal, type FitRequest } from './fit-lifecycle';

/** Asks for an exception in force to be withdrawn, and says why; a second person has to agree. */
export function askFitExceptionWithdrawal(request: FitRequest & { because: string }): Promise<Result<null>> {
  return askWithdrawal('fit-exception', request);
}
