import type { PlainDate } from '../quantities/plainDate';
import type { FitException, FitRule } from './rule';

/** Where a rule or exception is in its life on a given day. */
export type Standing = 'draft' | 'toCome' | 'inForce' | 'ended';

/** In force from its first day up to, and not including, the day it ends. */
export function standingOn(
  rule: Pick<FitRule | FitException, 'status' | 'inForceFrom' | 'inForceUntil'>,
  today: PlainDate,
): Standing {
  if (rule.status === 'draft') return 'draft';
  if (rule.inForceUntil !== null && rule.inForceUntil <= today) return 'ended';
  if (rule.status === 'withdrawn') return 'ended';
  return rule.inForceFrom !== null && rule.inForceFrom <= today ? 'inForce' : 'toCome';
}

/** What can be done next with a rule or exception: both steps of a withdrawal begin from what is in force or to come. */
export type Stage = 'draft' | 'inForce' | 'withdrawalAsked' | 'over';

export function stageOn(
  rule: Pick<
    FitRule | FitException,
    'status' | 'inForceFrom' | 'inForceUntil' | 'withdrawalAskedBy' | 'withdrawnBy'
  >,
  today: PlainDate,
): Stage {
  const standing = standingOn(rule, today);
  if (standing === 'draft') return 'draft';
  if (standing === 'ended' || rule.inForceUntil !== null) return 'over';
  return rule.withdrawalAskedBy !== null && rule.withdrawnBy === null ? 'withdrawalAsked' : 'inForce';
}
