import { z } from 'zod';
import { personId, theatreId } from '../identity/ids';
import { failed, ok, type Problem, type Result } from '../identity/result';
import { addDays, type PlainDate, plainDate } from '../quantities/plainDate';
import { timeOfDay } from '../time/zone';
import type { SessionSpan } from './inSession';
import { HOSPITAL_ZONE, instantOf } from './localTime';

/** The most weeks that sessions are entered for at once: half a year. */
const MOST_WEEKS = 26;

/** A session as it is asked for: what clock and calendar on the wall show, on this day. */
export const sessionTimes = {
  date: plainDate,
  from: timeOfDay,
  until: timeOfDay,
  /** Whose session it is; `null`: anybody's. */
  surgeonId: personId.nullable(),
};
export const sessionRequest = z.strictObject({
  theatreId,
  ...sessionTimes,
  /** How often, week after week on the same weekday at the same times on the wall; 1: on this day alone. */
  weeks: z
    .number('a number of weeks')
    .int('whole weeks')
    .min(1, 'at least 1 week')
    .max(MOST_WEEKS, `at most ${MOST_WEEKS} weeks`),
});

interface Wall {
  date: PlainDate;
  from: string;
  until: string;
}

/**
 * The instants of a session. One that ends no later than it begins ends the next day. A time that the clocks skip is none; of
 * one that comes twice a session begins with the first and ends with the second, so that it has the whole of the hour.
 */
export function sessionSpan({ date, from, until }: Wall, zone: string = HOSPITAL_ZONE): Result<SessionSpan> {
  const ends = until > from ? date : addDays(date, 1);
  const startsAt = instantOf(date, from, zone, 'first');
  const endsAt = instantOf(ends, until, zone, 'second');
  const problems: Problem[] = [];
  if (startsAt === null) problems.push(skipped('from', from, date));
  if (endsAt === null) problems.push(skipped('until', until, ends));
  return startsAt === null || endsAt === null ? failed(...problems) : ok({ startsAt, endsAt });
}

/** The dates of a session that comes again each week. */
export function weekly(date: PlainDate, weeks: number): PlainDate[] {
  return Array.from({ length: weeks }, (_, week) => addDays(date, 7 * week));
}

const skipped = (path: string, time: string, date: PlainDate): Problem => ({
  path: [path],
  code: 'time-skipped',
  message: `The clocks go forward over ${time} on ${date}: choose another time.`,
});
