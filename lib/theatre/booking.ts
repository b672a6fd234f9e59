import { z } from 'zod';
import { personId, startId, theatreId } from '../identity/ids';
import { failed, ok, problemsFromZod, type Result } from '../identity/result';
import { plainDate } from '../quantities/plainDate';
import { instantOf } from './localTime';
import { caseRegion, limb, urgency } from './surgicalCase';

/** What is asked for when a case is booked. There is no place for anything about the patient. */
export const bookingRequest = z.strictObject({
  theatreId: theatreId.or(z.literal('').refine(() => false, 'choose a theatre')),
  date: plainDate,
  time: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time as HH:MM, such as 08:30'),
  minutes: z.coerce
    .number('a number of minutes')
    .int('whole minutes')
    .min(10, 'at least 10 minutes')
    .max(24 * 60, 'at most 24 hours'),
  region: z.enum(caseRegion.options, 'choose a region'),
  limb: z.enum(limb.options, 'choose left or right'),
  surgeonId: personId.or(z.literal('').refine(() => false, 'choose a surgeon')),
  urgency: z.enum(urgency.options, 'choose how urgent it is'),
  /** A saved start to begin the plan from. */
  startId: startId.nullable(),
});
export type BookingRequest = z.infer<typeof bookingRequest>;

/** A booking with its instants worked out. */
export interface Booking extends BookingRequest {
  startsAt: string;
  endsAt: string;
}

/** Parses a booking; every fault at once, each beside its field. */
export function parseBooking(raw: unknown, zone: string): Result<Booking> {
  const parsed = bookingRequest.safeParse(raw);
  if (!parsed.success) return failed(...problemsFromZod(parsed.error));
  const startsAt = instantOf(parsed.data.date, parsed.data.time, zone);
  if (startsAt === null) {
    return failed({
      path: ['time'],
      code: 'time-skipped',
      message: 'The clocks go forward over this time on that day: choose another.',
    });
  }
  const endsAt = new Date(Date.parse(startsAt) + parsed.data.minutes * 60_000).toISOString();
  return ok({ ...parsed.data, startsAt, endsAt });
}
