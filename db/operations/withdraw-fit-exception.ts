import type { Result } from '@/lib/identity/result';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { type Agreed, type FitRequest, withdraw } from './fit-lifecycle';

/** A second person agrees that an exception ends on a day. */
export function withdrawFitException(
  request: FitRequest & Agreed & { until: PlainDate },
): Promise<Result<{ until: PlainDate }>> {
  return withdraw('fit-exception', request);
}
