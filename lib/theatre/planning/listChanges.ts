import type { LedgerAct } from '../../wording/ledger-acts';

/** Acts after which who gets which set is planned anew at once, by whoever did them. */
const LIST_CHANGES = [
  'apply-repair',
  'book-case',
  'cancel-case',
  'change-theatre-lead',
  'change-urgency',
  'confirm-plan',
  'end-wash',
  'hold-set',
  'import-list',
  'lift-hold',
  'move-case',
  'put-case-back',
  'reject-load',
  'withdraw-set',
] as const satisfies readonly LedgerAct[];

export type ListChange = (typeof LIST_CHANGES)[number];

export const isListChange = (action: string): boolean => LIST_CHANGES.some((change) => change === action);
