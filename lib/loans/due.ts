import { loanNotice } from '../calculations/loanNotice/loanNotice';
import { type LoanNoticeInput, loanNoticeInput } from '../calculations/loanNotice/schema';
import type { SettingValue } from '../settings/local';
import { HOSPITAL_ZONE, instantOf, wallClock } from '../theatre/localTime';

/** The hospital's rule of notice as the calculation takes it: it is kept with a loan once it has arrived. */
export type NoticeTerms = Pick<LoanNoticeInput, 'rule' | 'hours' | 'zone'>;

/** The hospital's setting as the rule and hours of the calculation `loan-notice`. */
export function noticeTerms(setting: SettingValue<'loans'>): NoticeTerms {
  const { noticeIn, noticeHours, noticeDays, dueBy } = setting;
  const day = [{ from: wall(setting.workFromMinutes), to: wall(setting.workUntilMinutes) }];
  const worked = (name: (typeof setting.workDays)[number]) => (setting.workDays.includes(name) ? day : []);
  return {
    zone: HOSPITAL_ZONE,
    rule:
      noticeIn === 'workingDays'
        ? { kind: noticeIn, days: noticeDays, dueBy }
        : { kind: noticeIn, hours: noticeHours },
    hours: {
      week: {
        monday: worked('monday'),
        tuesday: worked('tuesday'),
        wednesday: worked('wednesday'),
        thursday: worked('thursday'),
        friday: worked('friday'),
        saturday: worked('saturday'),
        sunday: worked('sunday'),
      },
      holidays: setting.holidays,
    },
  };
}

const wall = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

/** The input with which the calculation repeats when something needed at this instant was due. */
function noticeInput(neededAt: string, terms: NoticeTerms): LoanNoticeInput {
  const caseAt = wallClock(neededAt, terms.zone);
  // of an hour that comes twice in autumn, the wall alone does not say which
  const first = instantOf(caseAt.date, caseAt.time, terms.zone);
  const repeatedHour = first?.slice(0, 16) === neededAt.slice(0, 16) ? 'first' : 'second';
  return loanNoticeInput.parse({ ...terms, caseAt, arrivedAt: null, repeatedHour });
}

/** When something needed at this instant is due, as an ISO instant; `null` where no working time lies before it. */
export function dueOf(neededAt: string, terms: NoticeTerms): string | null {
  const answer = loanNotice(noticeInput(neededAt, terms));
  const figures = answer.outcome === 'answered' ? answer.answer : answer.known;
  return figures === null ? null : new Date(figures.due.atMs).toISOString();
}

/** When a loan is needed: as its case begins, else as work begins on the first day of its period. */
export function neededAt(
  loan: { fromDate: string | null },
  booked: { startsAt: string } | null,
  { workFromMinutes }: Pick<SettingValue<'loans'>, 'workFromMinutes'>,
): string | null {
  if (booked) return booked.startsAt;
  if (loan.fromDate === null) return null;
  const { date } = wallClock(`${loan.fromDate}T12:00:00Z`);
  return instantOf(date, wall(workFromMinutes));
}

/** Minutes that arrival was after due, towards the smaller; 0 where it was in time, `null` where it is not established. */
export function lateMinutes(dueAt: string | null, arrivedAt: string | null): number | null {
  if (dueAt === null || arrivedAt === null) return null;
  return Math.max(0, Math.floor((Date.parse(arrivedAt) - Date.parse(dueAt)) / 60_000));
}
