import { z } from 'zod';
import { cardId, personId, startId, theatreId } from '../identity/ids';
import { failed, ok, problemsFromZod, type Result } from '../identity/result';
import { parseSlot, slotRequest } from './slot';
import { caseRegion, limb, urgency } from './surgicalCase';

/** What is asked for when a case is booked. There is no place for anything about the patient. */
export const bookingRequest = z.strictObject({
  theatreId: theatreId.or(z.literal('').refine(() => false, 'choose a theatre')),
  ...slotRequest,
  region: z.enum(caseRegion.options, 'choose a region'),
  limb: z.enum(limb.options, 'choose left or right'),
  surgeonId: personId.or(z.literal('').refine(() => false, 'choose a surgeon')),
  urgency: z.enum(urgency.options, 'choose how urgent it is'),
  /** A saved start to begin the plan from. */
  startId: startId.nullable(),
  /** The preference card of its surgeon that the case is prepared by. */
  cardId: cardId.nullable().optional(),
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
  const slot = parseSlot(parsed.data, zone);
  return slot.ok ? ok({ ...parsed.data, ...slot.value }) : slot;
}
