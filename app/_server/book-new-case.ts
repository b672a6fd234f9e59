import 'server-only';
import { type BookedCase, bookCase } from '@/db/operations/book-case';
import type { Result } from '@/lib/identity/result';
import { parseBooking } from '@/lib/theatre/booking';
import { HOSPITAL_ZONE } from '@/lib/theatre/localTime';
import { drawReference, HOSPITAL_LETTERS } from './case-references';
import { newId, now } from './clock';
import { planAgain } from './plan-again';
import type { Access } from './session';

/** Books a case as it is asked for, and plans the list anew where it brings a plan; every fault at once. */
export async function bookNewCase(
  { db, person }: Pick<Access, 'db' | 'person'>,
  asked: unknown,
): Promise<Result<BookedCase>> {
  const booking = parseBooking(asked, HOSPITAL_ZONE);
  if (!booking.ok) return booking;
  const booked = await bookCase({
    db,
    now: now(),
    newId,
    draw: drawReference,
    hospitalLetters: HOSPITAL_LETTERS,
    person,
    booking: booking.value,
  });
  // a case without a plan asks for no set
  if (booked.ok && booking.value.startId !== null) await planAgain(db, person, 'book-case');
  return booked;
}
