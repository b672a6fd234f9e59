import { z } from 'zod';

/** Where a loan is between asking for it and giving it back. Plain words, ours; shown by `LOAN_STATE_WORDS`. */
export const loanState = z.enum([
  'asked',
  'refused',
  'calledOff',
  'confirmed',
  'here',
  'inService',
  'goingBack',
  'goneBack',
]);
export type LoanState = z.infer<typeof loanState>;

/**
 * Which state may follow which. The database keeps the same table and refuses anything else. What has arrived can only
 * go through our hands or back to the lender: it is never called off, and never refused any more.
 */
export const NEXT_LOAN_STATES: Readonly<Record<LoanState, readonly LoanState[]>> = {
  asked: ['confirmed', 'refused', 'calledOff'],
  refused: [],
  calledOff: [],
  confirmed: ['here', 'refused', 'calledOff'],
  here: ['inService', 'goingBack'],
  inService: ['goingBack'],
  goingBack: ['goneBack'],
  goneBack: [],
};

export const mayBecome = (from: LoanState, to: LoanState): boolean => NEXT_LOAN_STATES[from].includes(to);
