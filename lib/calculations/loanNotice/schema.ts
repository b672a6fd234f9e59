import { z } from 'zod';
import type { Problem } from '@/lib/identity/result';
import { plainDate } from '@/lib/quantities/plainDate';
import { workingHours } from '@/lib/time/workingTime';
import { instantOfWall, timeOfDay, timeZone } from '@/lib/time/zone';
import { loanNoticeWords } from '@/lib/wording/loan-notice';

const wallTime = z.strictObject({ date: plainDate, time: timeOfDay });

/** How long before the case a loan is due: the hospital's setting. */
export const noticeRule = z.discriminatedUnion('kind', [
  z
    .strictObject({ kind: z.literal('clockHours'), hours: z.number().int().min(1).max(2_000) })
    .meta({ title: 'Clock hours', description: 'Hours that pass, day and night' }),
  z
    .strictObject({ kind: z.literal('workingHours'), hours: z.number().int().min(1).max(500) })
    .meta({ title: 'Working hours', description: 'Hours of the stated working week' }),
  z
    .strictObject({
      kind: z.literal('workingDays'),
      days: z.number().int().min(1).max(60),
      dueBy: z.enum(['startOfWork', 'endOfWork']).default('startOfWork').meta({
        title: 'Due by',
        description: 'The start of work on that day, so that so many whole working days are left; or its end',
      }),
    })
    .meta({ title: 'Working days', description: 'Working days before the day of the case' }),
]);

export const loanNoticeInput = z.strictObject({
  zone: timeZone.meta({ title: 'Time zone', description: 'IANA name' }),
  caseAt: wallTime.meta({ title: 'Case begins', description: 'As the clock on the wall shows it' }),
  arrivedAt: wallTime
    .nullable()
    .meta({ title: 'Arrived', description: 'null where it is not here, or nobody wrote it down' }),
  now: wallTime
    .nullable()
    .default(null)
    .meta({ title: 'Now', description: 'Says of a loan that is not here whether it is overdue' }),
  repeatedHour: z.enum(['first', 'second']).default('first').meta({
    title: 'Of an hour that comes twice',
    description: 'Which one is meant by the times above, in the night when the clocks go back',
  }),
  rule: noticeRule.meta({ title: 'Due' }),
  hours: workingHours
    .nullable()
    .default(null)
    .meta({ title: 'Working hours', description: 'Needed where the rule counts them' }),
  processingMinutes: z
    .number()
    .int()
    .min(0)
    .max(20_000)
    .nullable()
    .default(null)
    .meta({ title: 'Time to process it', description: 'From arrival to the sterile store' }),
  trays: z
    .array(
      z.strictObject({
        tray: z.string().trim().min(1).max(80),
        massGrams: z.number().int().min(0).max(100_000).nullable(),
      }),
    )
    .max(100)
    .default([])
    .meta({ title: 'Trays', description: 'As weighed at arrival' }),
  massLimitsGrams: z
    .array(z.number().int().min(1).max(100_000))
    .max(10)
    .default([7_000, 10_000, 11_340])
    .meta({ title: 'Mass limits' }),
});

/** An instant and how it reads on the wall, with its offset (RFC 3339). */
const moment = z.strictObject({ atMs: z.number().int(), written: z.string() });

export const loanNoticeOutput = z.strictObject({
  outcome: z.enum(['inTime', 'late', 'notYetDue', 'overdue', 'unknown']),
  case: moment,
  due: moment,
  arrived: moment.nullable(),
  /** From arrival to the case, as time passes; negative where it came after the case began. */
  noticeMinutes: z.number().int().nullable(),
  /** The part of it within working hours; `null` where none are stated. */
  noticeWorkingMinutes: z.number().int().nullable(),
  /** From due to arrival, or to now where it is overdue; 0 where it is not late. */
  lateMinutes: z.number().int().nullable(),
  lateWorkingMinutes: z.number().int().nullable(),
  /** When it could be in the sterile store, and whether that is before the case. */
  processed: z.strictObject({ ...moment.shape, beforeCase: z.boolean() }).nullable(),
  overLimit: z.array(
    z.strictObject({
      limitGrams: z.number().int(),
      trays: z.array(z.string()),
      notWeighed: z.array(z.string()),
    }),
  ),
});

export type LoanNoticeInput = z.output<typeof loanNoticeInput>;
export type LoanNoticeOutput = z.output<typeof loanNoticeOutput>;

/** Times that the clocks skip, a rule without the hours it counts, and trays named twice. */
export function checkLoanNotice(input: LoanNoticeInput): Problem[] {
  const problems: Problem[] = [];
  for (const field of ['caseAt', 'arrivedAt', 'now'] as const) {
    const wall = input[field];
    const hard = { skipped: 'refuse', repeated: input.repeatedHour } as const;
    if (wall && instantOfWall(wall, input.zone, hard).kind === 'skipped')
      problems.push({
        path: [field, 'time'],
        code: 'time-skipped',
        message: loanNoticeWords.skipped(wall.time, wall.date),
      });
  }
  if (input.rule.kind !== 'clockHours') {
    if (input.hours === null)
      problems.push({ path: ['hours'], code: 'hours-needed', message: loanNoticeWords.hoursNeeded });
    else if (Object.values(input.hours.week).every((day) => day.length === 0))
      problems.push({ path: ['hours', 'week'], code: 'no-work', message: loanNoticeWords.noWork });
  }
  const seen = new Set<string>();
  input.trays.forEach(({ tray }, at) => {
    if (seen.has(tray))
      problems.push({
        path: ['trays', at, 'tray'],
        code: 'duplicate',
        message: loanNoticeWords.duplicate(tray),
      });
    seen.add(tray);
  });
  return problems;
}
