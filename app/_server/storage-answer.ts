import 'server-only';
import { plainReason, type StorageFault, storageFault } from '@/lib/running/plainReason';
import { type RecordClash, recordClash } from '@/lib/running/recordClash';
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

const CLASH_STATUS: Record<RecordClash, number> = { taken: 409, notThere: 422 };

/**
 * What the disk or the store would not do, as an answer in words: also where an id that was sent is another thing's, or names
 * nothing. Anything else is thrown on: it is a fault of ours.
 */
export function storageAnswer(error: unknown): Refused {
  const clash = recordClash(error);
  if (clash !== null) {
    console.error(`Nothing was done: ${plainReason(error)}`);
    const problem = { path: [], code: `record-${clash}`, message: words.clash[clash] };
    return problemResponse(CLASH_STATUS[clash], words.notSavedTitle, [problem]);
  }
  const fault = storageFault(error);
  if (fault === null) throw error;
  console.error(`Nothing was saved: ${plainReason(error)}`);
  const problem = { path: [], code: `store-${fault}`, message: words.notSaved[fault] };
  const answer = problemResponse(STATUS[fault], words.notSavedTitle, [problem]);
  if (fault !== 'damaged') answer.headers.set('Retry-After', String(RETRY_AFTER_SECONDS));
  return answer;
}
