import type { WorkingStep } from '@/lib/calculations/calculation';
import type { LoanNoticeInput, LoanNoticeOutput } from '@/lib/calculations/loanNotice/schema';
import type { CalculationWords } from './calculations';
import { countWord } from './numbers';

export const loanNoticeDescription: CalculationWords = {
  title: 'Loan notice',
  question: 'When was this loan due, did it come in time, and can it be processed before the case?',
  formula: [
    'Clock hours: due = start of the case − hours that pass',
    'Working hours: due = the latest instant from which so many hours of the stated week lie before the case',
    'Working days: due = start (or end) of work on the working day that many before the day of the case',
    'Late = arrival − due, where that is more than nothing',
  ],
  assumptions: [
    'Times are those of the wall in the stated zone; a time that the clocks skip is refused.',
    'Of an hour that comes twice the stated one is meant; ends of working hours take the first, and a skipped one is moved on.',
    'Hours are hours that pass: the night when the clocks change is an hour shorter or longer, or half an hour, as the zone has it.',
    'A loan that comes at the very instant it is due is in time.',
    'Processing goes on within working hours where they are stated, else day and night.',
  ],
  sources: [
    { text: 'Which rule holds and which hours are worked: local policy' },
    { text: 'Zones and clock changes: IANA time zone database, as the system has it' },
    { text: 'Skipped and repeated times: ECMAScript Temporal, disambiguation' },
    { text: '48 hours, or two working days: common practice, no source' },
    { text: '7, 10 and 11.34 kg: as in the completeness calculation' },
  ],
};

const OUTCOME_WORDS: Record<LoanNoticeOutput['outcome'], string> = {
  inTime: 'in time',
  late: 'late',
  notYetDue: 'not here, and not yet due',
  overdue: 'not here, and overdue',
  unknown: 'not known',
};

/** `2430 → '40 h 30 min'`. */
export function hoursWords(minutes: number): string {
  const sign = minutes < 0 ? '−' : '';
  const whole = Math.floor(Math.abs(minutes) / 60);
  const rest = Math.abs(minutes) % 60;
  if (whole === 0) return `${sign}${rest} min`;
  return rest === 0 ? `${sign}${whole} h` : `${sign}${whole} h ${rest} min`;
}

export const loanNoticeWords = {
  skipped: (time: string, date: string) =>
    `The clocks go forward over ${time} on ${date}: give the time that the clock showed.`,
  hoursNeeded: 'The rule counts working time: state the working week, or count clock hours.',
  noWork: 'Nobody works on any day of this week: state when they do, or count clock hours.',
  noWorkBefore: 'working days before the case: there is none in the two years before',
  duplicate: (tray: string) => `“${tray}” is given twice: give each tray its own name.`,
  arrivalMissing: 'when the loan arrived; or what time it is now, if it is not here',
  massMissing: (tray: string) => `the mass of ${tray}`,
  ruleWord(rule: LoanNoticeInput['rule']): string {
    switch (rule.kind) {
      case 'clockHours':
        return `${rule.hours} clock hours before`;
      case 'workingHours':
        return `${rule.hours} working hours before`;
      case 'workingDays':
        return `${countWord(rule.days)} working ${rule.days === 1 ? 'day' : 'days'} before, ${
          rule.dueBy === 'startOfWork' ? 'at the start of work' : 'by the end of work'
        }`;
    }
  },
  working(answer: LoanNoticeOutput, rule: LoanNoticeInput['rule']): WorkingStep[] {
    const { arrived, noticeMinutes, noticeWorkingMinutes, lateMinutes, processed } = answer;
    return [
      {
        label: 'Due',
        expression: `${answer.case.written}, ${loanNoticeWords.ruleWord(rule)}`,
        value: answer.due.written,
      },
      ...(arrived && noticeMinutes !== null
        ? [
            {
              label: 'Notice',
              expression: `${arrived.written} to ${answer.case.written}`,
              value:
                noticeWorkingMinutes === null
                  ? hoursWords(noticeMinutes)
                  : `${hoursWords(noticeMinutes)}, ${hoursWords(noticeWorkingMinutes)} of them worked`,
            },
          ]
        : []),
      {
        label: 'Outcome',
        expression: OUTCOME_WORDS[answer.outcome],
        value:
          lateMinutes === null ? '–' : lateMinutes === 0 ? 'not late' : `${hoursWords(lateMinutes)} late`,
      },
      ...(processed
        ? [
            {
              label: 'Processed',
              expression: processed.beforeCase ? 'before the case' : 'after the case began',
              value: processed.written,
            },
          ]
        : []),
      ...answer.overLimit.map(({ limitGrams, trays }) => ({
        label: `Above ${limitGrams / 1000} kg`,
        expression: trays.length === 0 ? 'none' : trays.join(', '),
        value: String(trays.length),
      })),
    ];
  },
};
