import type { Meaning } from '../people/attestation';

/** What a person says by proving again who they are, as it is shown before and after. */
export const MEANING_WORDS: Record<Meaning, string> = {
  iCounted: 'I counted',
  iChecked: 'I checked',
  iRefilled: 'I refilled',
  iPacked: 'I packed',
  iSendItShort: 'I send it short',
  iAcceptThisLoad: 'I accept this load',
  iRejectThisLoad: 'I reject this load',
  iLiftThisHold: 'I lift this hold',
  iApprove: 'I approve',
  iCorrect: 'I correct the record',
  iLookedAtTheBarrier: 'I looked at it: whole, dry and sealed',
  iSettleThis: 'I settle this question',
  iDeclareThisLoan: 'I declare this loan as stated',
  iHandThisOver: 'I hand this over',
  iCloseThisRecall: 'I close this recall',
  iCloseThisReconciliation: 'I close this reconciliation',
  iRecordedThis: 'I recorded what was used',
};
