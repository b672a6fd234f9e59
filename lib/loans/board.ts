import type { LoanNext } from './nextStep';
import type { LoanState } from './states';

/** Where a loan stands on the board. */
export type LoanPart = 'late' | 'here' | 'toGoBack' | 'due' | 'over';

/** In which part of the board a loan is, by what is to be done about it. */
export function partOf(loan: { state: LoanState; next: LoanNext; overdue: boolean }): LoanPart {
  const { state, next, overdue } = loan;
  if (overdue || (state === 'here' && isAboutLateness(next))) return 'late';
  if (state === 'goingBack' || next.do === 'beginReturn') return 'toGoBack';
  if (state === 'goneBack' && next.do !== 'nothing') return 'toGoBack';
  if (state === 'here' || state === 'inService') return 'here';
  return state === 'asked' || state === 'confirmed' ? 'due' : 'over';
}

const isAboutLateness = (next: LoanNext): boolean =>
  (next.do === 'ask' || next.do === 'awaitAnswer') && next.question === 'acceptLate';

/** Whether the next step is the loan keeper's own, rather than something they wait for. */
export function isKeepers({ do: next }: LoanNext): boolean {
  switch (next) {
    case 'recordArrival':
    case 'awaitAnswer':
    case 'ordinaryTurn':
    case 'decontaminate':
    case 'declare':
    case 'checkIn':
    case 'checkOut':
    case 'nothing':
      return false;
    default:
      return true;
  }
}
