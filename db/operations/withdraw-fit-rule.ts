import type { Result } from '@/lib/identity/result';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { type Agreed, type FitRequest, withdraw } from './fit-lifecycle';

/** A second person agrees that a rule ends on a day. */
export function withdrawFitRule(
  request: FitRequest & Agreed & { until: PlainDate },
): Promise<Result<{ until: PlainDate }>> {
  return withdraw('fit-rule', request);
}
