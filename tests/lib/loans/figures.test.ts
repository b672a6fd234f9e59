import { describe, expect, it } from 'vitest';
import { dueOf, lateMinutes, neededAt, noticeTerms } from '@/lib/loans/due';
import { type LoanOnRecord, lenderFigures } from '@/lib/loans/figures';
import { plainDate } from '@/lib/quantities/plainDate';
import { parseSetting } from '@/lib/settings/local';

const setting = parseSetting('loans', undefined);
const NOW = '2026-02-01T12:00:00.000Z';

describe('when a loan is due', () => {
  it.each([
    // Worked by hand on the calendar of January 2026 (the 14th is a Wednesday); hours 08:00 to 18:00, Monday to Friday
    [
      'two working days before a Wednesday: Monday, by the start of work',
      {},
      '2026-01-14T08:30:00.000Z',
      '2026-01-12T08:00:00.000Z',
    ],
    [
      'two working days before a Monday: Thursday',
      {},
      '2026-01-19T08:30:00.000Z',
      '2026-01-15T08:00:00.000Z',
    ],
    [
      'by the end of work',
      { dueBy: 'endOfWork' as const },
      '2026-01-14T08:30:00.000Z',
      '2026-01-12T18:00:00.000Z',
    ],
    [
      '48 hours that pass, over a weekend',
      { noticeIn: 'clockHours' as const },
      '2026-01-19T08:30:00.000Z',
      '2026-01-17T08:30:00.000Z',
    ],
    // the clocks go forward in the night to 29 March 2026 (IANA time zone database, Europe/London): 48 hours that pass
    // end an hour earlier on the wall
    [
      '48 hours over the clock change',
      { noticeIn: 'clockHours' as const },
      '2026-03-30T07:30:00.000Z',
      '2026-03-28T07:30:00.000Z',
    ],
    [
      'working days over the clock change keep the time on the wall',
      {},
      '2026-03-31T07:30:00.000Z',
      '2026-03-27T08:00:00.000Z',
    ],
    // the banks' holidays of England and Wales: Friday 25 and, in lieu of Saturday 26, Monday 28 December 2026 (Banking and
    // Financial Dealings Act 1971, schedule 1; from memory): Thursday 24 and Wednesday 23 are the two days worked before
    [
      'two working days before a Tuesday after Christmas',
      { holidays: ['2026-12-25', '2026-12-28'].map((day) => plainDate.parse(day)) },
      '2026-12-29T08:30:00.000Z',
      '2026-12-23T08:00:00.000Z',
    ],
    ['the same where no day off is stated', {}, '2026-12-29T08:30:00.000Z', '2026-12-25T08:00:00.000Z'],
  ])('%s', (_why, change, needed, due) => {
    expect(dueOf(needed, noticeTerms({ ...setting, ...change }))).toBe(due);
  });

  it('is not established where nobody works on any day', () => {
    expect(dueOf('2026-01-14T08:30:00.000Z', noticeTerms({ ...setting, workDays: [] }))).toBeNull();
  });

  it('a loan for a period is needed as work begins on its first day, summer time or not', () => {
    expect(neededAt({ fromDate: '2026-01-14' }, null, setting)).toBe('2026-01-14T08:00:00.000Z');
    expect(neededAt({ fromDate: '2026-07-01' }, null, setting)).toBe('2026-07-01T07:00:00.000Z');
    expect(neededAt({ fromDate: null }, { startsAt: NOW }, setting)).toBe(NOW);
  });
});

describe('the figures of a lender', () => {
  const due = '2026-01-12T08:00:00.000Z';
  const came = (minutesLate: number, more: Partial<LoanOnRecord> = {}): LoanOnRecord => ({
    state: 'goneBack',
    dueAt: due,
    arrivedAt: new Date(Date.parse(due) + minutesLate * 60_000).toISOString(),
    processed: true,
    used: true,
    ...more,
  });

  it('a worked example: five loans, two of them late by 90 minutes and two days', () => {
    const loans = [came(-300), came(0), came(90), came(2_880), came(-10)];
    expect(lenderFigures(loans, NOW).punctuality).toEqual({
      n: 5,
      onTime: 3,
      medianLateMinutes: 0,
      worstLateMinutes: 2_880,
      notEstablished: 0,
      overdue: 0,
    });
    // of an even number, between the two in the middle: 0, 90, 2 880 and 90 → (90 + 90) / 2
    expect(lenderFigures([...loans.slice(1, 4), came(90)], NOW).punctuality.medianLateMinutes).toBe(90);
    expect(lenderFigures([came(0), came(31)], NOW).punctuality.medianLateMinutes).toBe(15);
  });

  it('what is not established is in no share, and there is no share of nothing', () => {
    const unknown = came(0, { dueAt: null });
    const overdue: LoanOnRecord = {
      state: 'confirmed',
      dueAt: due,
      arrivedAt: null,
      processed: false,
      used: false,
    };
    expect(lenderFigures([unknown, overdue], NOW)).toEqual({
      punctuality: {
        n: 0,
        onTime: 0,
        medianLateMinutes: null,
        worstLateMinutes: null,
        notEstablished: 1,
        overdue: 1,
      },
      unused: { n: 1, unused: 0 },
    });
  });

  it('processed but unused: of loans gone back that were washed here, those never in theatre', () => {
    const loans = [
      came(0),
      came(0, { used: false }),
      came(0, { used: false, processed: false }),
      came(0, { used: false, state: 'inService' }),
    ];
    expect(lenderFigures(loans, NOW).unused).toEqual({ n: 2, unused: 1 });
  });

  it('lateness is whole minutes, and never less than nothing', () => {
    expect(lateMinutes(due, '2026-01-12T08:00:59.000Z')).toBe(0);
    expect(lateMinutes(due, '2026-01-12T07:00:00.000Z')).toBe(0);
    expect(lateMinutes(null, due)).toBeNull();
  });
});
