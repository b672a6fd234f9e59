import { eq } from 'drizzle-orm';
import type { Problem } from '@/lib/identity/result';
import { changeWords } from '@/lib/wording/changes';
import type { Queries } from '../../client';
import type { TrialSubject } from '../../queries/changes/trials';
import type { Person } from '../../queries/people';
import { changeTrials } from '../../schema';

/** How long a trial may stand for what would change; the store moves on meanwhile. */
export const TRIAL_GOOD_FOR_MINUTES = 60;

/**
 * Whether a person has seen what they approve: a trial of their own, of this very change, against what is in force now, and
 * not long ago. Answers the trial's id and digest for the ledger, or why it does not stand.
 */
export async function trialSeen(
  write: Queries,
  given: {
    trialId: string;
    subject: TrialSubject;
    person: Person;
    contentDigest: string;
    basisDigest: string;
    now: string;
  },
): Promise<{ ok: true; seen: { id: string; digest: string } } | { ok: false; problem: Problem }> {
  const { subject, person, now } = given;
  const problem = (code: string, message: string): { ok: false; problem: Problem } => ({
    ok: false,
    problem: { path: ['trialId'], code, message },
  });
  const [trial] = await write.select().from(changeTrials).where(eq(changeTrials.id, given.trialId));
  const same =
    trial?.subjectKind === subject.kind &&
    trial.subjectId === subject.id &&
    trial.change === subject.change &&
    trial.triedBy === person.id;
  if (!trial || !same) return problem('not-tried', changeWords.notTried(person.name));
  if (trial.contentDigest !== given.contentDigest) return problem('draft-changed', changeWords.draftChanged);
  if (trial.basisDigest !== given.basisDigest) return problem('basis-changed', changeWords.basisChanged);
  const minutes = (Date.parse(now) - Date.parse(trial.triedAt)) / 60_000;
  if (minutes < 0 || minutes > TRIAL_GOOD_FOR_MINUTES)
    return problem('tried-long-ago', changeWords.triedLongAgo(TRIAL_GOOD_FOR_MINUTES));
  return { ok: true, seen: { id: trial.id, digest: trial.resultDigest } };
}
