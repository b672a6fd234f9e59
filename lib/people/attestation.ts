import { z } from 'zod';
import type { PersonId } from '../identity/ids';

/** What a person says by proving again who they are. The words shown are in `lib/wording/attestations.ts`. */
export const meaning = z.enum([
  'iCounted',
  'iChecked',
  'iRefilled',
  'iPacked',
  'iSendItShort',
  'iAcceptThisLoad',
  'iRejectThisLoad',
  'iLiftThisHold',
  'iApprove',
  'iCorrect',
  'iLookedAtTheBarrier',
  'iSettleThis',
  'iDeclareThisLoan',
  'iHandThisOver',
  'iCloseThisRecall',
  'iCloseThisReconciliation',
  'iRecordedThis',
]);
export type Meaning = z.infer<typeof meaning>;

/**
 * That a person proved who they are for one act, and what they said by it. Made only by `prove` of `app/_server/prove.ts`
 * after a password or a PIN was checked; an operation that needs one writes it into its ledger entry.
 */
export interface Attestation {
  personId: PersonId;
  meaning: Meaning;
  method: 'password' | 'pin' | 'badgeAndPin';
  at: string;
}

/** An attestation stands for the act it was made for and no longer than this. */
const GOOD_FOR_MS = 2 * 60_000;

export function attests(one: Attestation, by: PersonId, what: Meaning, now: string): boolean {
  const age = Date.parse(now) - Date.parse(one.at);
  return one.personId === by && one.meaning === what && age >= 0 && age <= GOOD_FOR_MS;
}
