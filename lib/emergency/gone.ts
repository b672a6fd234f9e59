import type { Problem } from '../identity/result';
import { emergencyWords as words } from '../wording/emergency';

/** Further back, it is not remembered to the minute: the record is corrected by those who may. */
const MOST_HOURS_BACK = 12;

/** What is wrong with the time at which a set is said to have gone to theatre. */
export function goneProblems(goneAt: string, now: string): Problem[] {
  const at = Date.parse(goneAt);
  const problem = (code: string, message: string): Problem => ({ path: ['goneAt'], code, message });
  if (at > Date.parse(now)) return [problem('in-the-future', words.goneInFuture)];
  if (at < Date.parse(now) - MOST_HOURS_BACK * 3_600_000)
    return [problem('too-long-ago', words.goneTooLongAgo(MOST_HOURS_BACK))];
  return [];
}
