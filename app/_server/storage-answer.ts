import 'server-only';
import { plainReason, type StorageFault, storageFault } from '@/lib/running/plainReason';
import { runningWords as words } from '@/lib/wording/running';
import type { Refused } from './answer';
import { problemResponse } from './problem-response';

/** 507: no room for what was sent (RFC 4918 §11.5); 503: not now; 500: waiting does not help. */
const STATUS: Record<StorageFault, number> = {
  full: 507,
  readOnly: 503,
  notWritten: 503,
  held: 503,
  silent: 503,
  damaged: 500,
};
const RETRY_AFTER_SECONDS = 5;

/** The same in a sentence, for a form that is sent without an endpoint. */
export function storageSentence(error: unknown): string {
  const fault = storageFault(error);
  if (fault === null) throw error;
  console.error(`Nothing was saved: ${plainReason(error)}`);
  return words.notSaved[fault];
}

/** What the disk or the store would not do, as an answer in words. Anything else is thrown on: it is a fault of ours. */
export function storageAnswer(error: unknown): Refused {
  const fault = storageFault(error);
  if (fault === null) throw error;
  console.error(`Nothing was saved: ${plainReason(error)}`);
  const problem = { path: [], code: `store-${fault}`, message: words.notSaved[fault] };
  const answer = problemResponse(STATUS[fault], words.notSavedTitle, [problem]);
  if (fault !== 'damaged') answer.headers.set('Retry-After', String(RETRY_AFTER_SECONDS));
  return answer;
}
