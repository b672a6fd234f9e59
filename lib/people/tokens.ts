import { z } from 'zod';
import { personId } from '../identity/ids';
import { type Act, type Actor, may, PERMITTED } from './permissions';

/** Why an act is for a person who is here. Its sentence is in `lib/wording/tokens.ts`. */
export type PresenceReason = 'approval' | 'release' | 'hands' | 'people' | 'record';

/**
 * Acts that no token lets anybody do: what a person stands for by being there. Beside these, whatever asks for a PIN or a
 * password is refused to a token where it is asked.
 */
export const NEEDS_PRESENCE: Partial<Record<Act, PresenceReason>> = {
  // a second person, or the one who decides
  approveConfiguration: 'approval',
  approveFitRule: 'approval',
  approveRestock: 'approval',
  approveUsageOrder: 'approval',
  confirmPlan: 'approval',
  decideStockCount: 'approval',
  // lets something go to a patient, or closes what was open
  acceptLoad: 'release',
  rejectLoad: 'release',
  liftHold: 'release',
  sendWithSubstitute: 'release',
  sendShortAsTheatreLead: 'release',
  sendShortAsSurgeon: 'release',
  askForImplantsEarly: 'release',
  judgeBarrier: 'release',
  closeRecall: 'release',
  settleAsNotFound: 'release',
  settleGoneAgainstRecord: 'release',
  closeEmergencyQuestion: 'release',
  // counted, or looked at, by somebody's own hands and eyes
  checkCount: 'hands',
  checkKit: 'hands',
  countInTheatre: 'hands',
  countInTheatreWith: 'hands',
  // who is here and how they prove it
  ownAccount: 'people',
  keepFeeds: 'people',
  managePeople: 'people',
  manageTokens: 'people',
  enrolWorkstation: 'people',
  correctRecord: 'record',
};

/** Acts that a token may be issued for, in the order of `PERMITTED`. */
export const TOKEN_ACTS = (Object.keys(PERMITTED) as Act[]).filter((act) => !(act in NEEDS_PRESENCE));

/** Goes with every token: whatever is written is read beside. */
export const EVERY_TOKEN: Act = 'readHospital';

/** What a token of these acts lets its person do now: never more than their role, nor what needs them here. */
export function scopeOf(person: Actor, acts: readonly string[]): Act[] {
  return TOKEN_ACTS.filter((act) => (act === EVERY_TOKEN || acts.includes(act)) && may(person, act));
}

/** The longest a token lasts: a forgotten one ends by itself. */
export const LONGEST_DAYS = 366;

/** A token asked for: whose it is, for which system, what it may do, and for how many days. */
export const tokenRequest = z.strictObject({
  personId,
  name: z.string().trim().min(1, 'say which system it is for').max(60, 'at most 60 characters'),
  scope: z.array(z.enum(TOKEN_ACTS, 'no act that a token can be issued for')).max(TOKEN_ACTS.length),
  days: z
    .number('a number of days')
    .int('whole days')
    .min(1, 'at least one day')
    .max(LONGEST_DAYS, `at most ${LONGEST_DAYS} days`),
});

/** How a token begins, so that one that got into a text is known for what it is. */
export const TOKEN_MARK = 'kitwright_';

export type TokenState = 'open' | 'expired' | 'revoked' | 'leftBehind';

/** Whether a token opens anything at this moment. One whose person has left opens nothing. */
export function tokenState(
  token: { expiresAt: string; revokedAt: string | null; personLeft: boolean },
  now: string,
): TokenState {
  if (token.revokedAt !== null) return 'revoked';
  if (token.expiresAt <= now) return 'expired';
  return token.personLeft ? 'leftBehind' : 'open';
}

const WORTH_NOTING_MS = 60_000;

/** Whether the last use on record is old enough for the next to be worth a write. */
export const lastUseIsOld = (lastUsedAt: string | null, now: string): boolean =>
  lastUsedAt === null || Date.parse(now) - Date.parse(lastUsedAt) >= WORTH_NOTING_MS;
