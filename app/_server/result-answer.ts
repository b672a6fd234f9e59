import 'server-only';
import type { Refusal } from '@/lib/identity/refusal';
import type { Result } from '@/lib/identity/result';
import type { Answer } from './answer';
import { jsonAnswer } from './json-answer';
import { outcomeAnswer } from './outcome-answer';

/** Why something was not done, by what its first problem is called, where that is not that it can’t be so. */
const BECAUSE: Record<string, Refusal<unknown>['because']> = {
  'not-permitted': 'notPermitted',
  'not-found': 'notFound',
  'changed-meanwhile': 'conflict',
};

/** The result of a write that tells its problems alone, as HTTP. */
export function resultAnswer<T, S extends number = 200>(result: Result<T>, status?: S): Answer<T, S> {
  if (result.ok) return jsonAnswer(result.value, status === undefined ? {} : { status });
  const { problems } = result;
  const because = BECAUSE[problems[0]?.code ?? ''] ?? 'invalid';
  return outcomeAnswer({ ok: false, refusal: { because, problems, current: null } });
}
