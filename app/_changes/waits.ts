import type { TrialOnFile } from '@/db/queries/changes/trials';

/** Why somebody can't agree to a change yet, in a sentence; `null` when they can. The operation asks all of it again. */
export function agreeWaits({
  trials,
  me,
  mayAgree,
  first,
  basisDigest,
}: {
  trials: readonly TrialOnFile[];
  me: { id: string; name: string };
  mayAgree: boolean;
  /** Who took the first of the two steps. */
  first: string | null;
  basisDigest: string;
}): string | null {
  if (!mayAgree)
    return `${me.name} may not approve: a theatre manager, a decontamination lead or an administrator may.`;
  if (first === me.id) return 'You took the first of the two steps: a second person has to agree.';
  const mine = trials.find(({ by }) => by.id === me.id);
  if (!mine) return 'Try it first: nobody approves what they have not seen.';
  if (mine.basisDigest !== basisDigest) return 'What is in force changed since you tried it: try it again.';
  return null;
}
