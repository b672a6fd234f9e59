import { z } from 'zod';
import { failed, ok, type Result } from '../identity/result';
import { plainDate } from '../quantities/plainDate';
import { timeOfDay } from '../time/zone';
import { HOSPITAL_ZONE, instantOf } from './localTime';

/** When a case is, as it is asked for: wall-clock time at the hospital, and how long. */
export const slotRequest = {
  date: plainDate,
  time: timeOfDay,
  /** Which, of a time that comes twice on the day the clocks go back; the first where nothing is said. */
  which: z.enum(['first', 'second']).optional(),
  minutes: z.coerce
    .number('a number of minutes')
    .int('whole minutes')
    .min(10, 'at least 10 minutes')
    .max(24 * 60, 'at most 24 hours'),
};
type SlotRequest = z.infer<z.ZodObject<typeof slotRequest>>;

/** The instants of a slot; a time that the clocks skip is none, and of one that comes twice it is the one asked for. */
export function parseSlot(
  { date, time, which, minutes }: SlotRequest,
  zone: string = HOSPITAL_ZONE,
): Result<{ startsAt: string; endsAt: string }> {
  const startsAt = instantOf(date, time, zone, which);
  if (startsAt === null) {
    return failed({
      path: ['time'],
      code: 'time-skipped',
      message: 'The clocks go forward over this time on that day: choose another.',
    });
  }
  return ok({ startsAt, endsAt: new Date(Date.parse(startsAt) + minutes * 60_000).toISOString() });
}
