import { z } from 'zod';
import type { Problem } from '../identity/result';
import { turnWords as words } from '../wording/turns';

/** When something was done, as it may be sent along with the act: an instant with its zone, or nothing for “now”. */
export const actTime = z.iso.datetime({ offset: true, error: 'a moment with its time zone' }).nullish();

/**
 * When an act was done: now, unless an earlier moment is stated. Not in the future, and not before the step the set is in
 * began, so that the order of a set's steps is the order in which they were taken.
 */
export function doneWhen(
  stated: string | null | undefined,
  now: string,
  lastStepAt: string,
): { doneAt: string; problems: Problem[] } {
  if (stated === null || stated === undefined) return { doneAt: now, problems: [] };
  const parsed = actTime.safeParse(stated);
  const at = parsed.success ? Date.parse(stated) : Number.NaN;
  if (Number.isNaN(at)) return { doneAt: now, problems: [problem('not-a-moment', words.notAMoment)] };
  const doneAt = new Date(at).toISOString();
  if (at > Date.parse(now)) return { doneAt, problems: [problem('in-the-future', words.inTheFuture)] };
  if (at < Date.parse(lastStepAt))
    return { doneAt, problems: [problem('before-the-last-step', words.beforeLastStep(lastStepAt, now))] };
  return { doneAt, problems: [] };
}

const problem = (code: string, message: string): Problem => ({ path: ['doneAt'], code, message });
