import { loanNoticeDescription } from '@/lib/wording/loan-notice';
import { defineCalculation } from '../calculation';
import { loanNotice } from './loanNotice';
import { checkLoanNotice, loanNoticeInput, loanNoticeOutput } from './schema';

const day = [{ from: '08:00', to: '18:00' }];

export const loanNoticeCalculation = defineCalculation({
  name: 'loan-notice',
  ...loanNoticeDescription,
  input: loanNoticeInput,
  output: loanNoticeOutput,
  example: {
    zone: 'Europe/London',
    caseAt: { date: '2026-01-19', time: '08:00' },
    arrivedAt: { date: '2026-01-16', time: '16:00' },
    rule: { kind: 'workingDays', days: 2 },
    hours: {
      week: {
        monday: day,
        tuesday: day,
        wednesday: day,
        thursday: day,
        friday: day,
        saturday: [],
        sunday: [],
      },
      holidays: ['2026-01-01'],
    },
    processingMinutes: 360,
    trays: [
      { tray: 'loan 1', massGrams: 8_200 },
      { tray: 'loan 2', massGrams: 9_600 },
      { tray: 'loan 3', massGrams: 12_100 },
    ],
  },
  check: checkLoanNotice,
  run: loanNotice,
});
