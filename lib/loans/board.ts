import type { PlainDate } from '../quantities/plainDate';
import { wallClock } from '../theatre/localTime';
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

/**
 * Whether something about a loan is to be done now: it is late, or due by the end of that date, or here with a step open
 * that is not an ordinary turn, or to go back. A loan asked for that nobody has answered counts once it is due.
 */
export function isForNow(
  loan: { state: LoanState; next: LoanNext; overdue: boolean; dueAt: string | null },
  until: PlainDate,
): boolean {
  const byThen = (date: string | null) => date !== null && date <= until;
  switch (partOf(loan)) {
    case 'late':
      return true;
    case 'due':
      return byThen(loan.dueAt && wallClock(loan.dueAt).date);
    case 'here':
      return loan.next.do !== 'ordinaryTurn';
    case 'toGoBack':
      return true;
    case 'over':
      return false;
  }
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
