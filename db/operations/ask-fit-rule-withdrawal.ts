import type { Result } from '@/lib/identity/result';
import { askWithdrawal, type FitRequest } from './fit-lifecycle';

/** Asks for a rule in force to be withdrawn, and says why; a second person has to agree. */
export function askFitRuleWithdrawal(request: FitRequest & { because: string }): Promise<Result<null>> {
  return askWithdrawal('fit-rule', request);
}
