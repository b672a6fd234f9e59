import { describe, expect, it } from 'vitest';
import { isForNow, partOf } from '@/lib/loans/board';
import type { LoanNext } from '@/lib/loans/nextStep';
import { type LoanState, NEXT_LOAN_STATES } from '@/lib/loans/states';
import { plainDate } from '@/lib/quantities/plainDate';

const UNTIL = plainDate.parse('2026-01-15');
const loan = (state: LoanState, next: LoanNext['do'], more: object = {}) => ({
  state,
  next: { do: next } as LoanNext,
  overdue: false,
  dueAt: null as string | null,
  ...more,
});

describe('what is to be seen to now', () => {
  it('is what is late, due by then, or here with a step of its own', () => {
    const due = (dueAt: string | null) => isForNow(loan('confirmed', 'recordArrival', { dueAt }), UNTIL);
    // 15 January by the clock of the hospital ends at midnight UTC: London keeps UTC in winter (IANA, Europe/London)
    expect(due('2026-01-15T23:59:59.000Z')).toBe(true);
    expect(due('2026-01-16T00:00:00.000Z')).toBe(false);
    expect(due(null)).toBe(false);
    expect(isForNow(loan('asked', 'recordAnswer', { overdue: true }), UNTIL)).toBe(true);
    expect(isForNow(loan('here', 'weigh'), UNTIL)).toBe(true);
    expect(isForNow(loan('inService', 'ordinaryTurn'), UNTIL)).toBe(false);
    expect(isForNow(loan('inService', 'beginReturn'), UNTIL)).toBe(true);
    expect(isForNow(loan('goneBack', 'settleClaims'), UNTIL)).toBe(true);
    expect(isForNow(loan('goneBack', 'nothing'), UNTIL)).toBe(false);
  });

  it('is never what is over, whatever its dates', () => {
    for (const state of Object.keys(NEXT_LOAN_STATES) as LoanState[]) {
      const one = loan(state, 'nothing', { dueAt: '2026-01-01T08:00:00.000Z' });
      if (partOf(one) === 'over') expect(isForNow(one, UNTIL), state).toBe(false);
    }
  });
});
