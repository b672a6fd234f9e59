import type { Result } from '@/lib/identity/result';
import { type FitRequest, keep } from './fit-lifecycle';

/** Turns the withdrawal of an exception down: it stays in force. */
export function keepFitException(request: FitRequest): Promise<Result<null>> {
  return keep('fit-exception', request);
}
