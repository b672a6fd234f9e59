'use server';

import { redirect } from 'next/navigation';
import { drawReference, HOSPITAL_LETTERS } from '@/app/_server/case-references';
import { newId, now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { planAgain } from '@/app/_server/plan-again';
import { storageSentence } from '@/app/_server/storage-answer';
import type { FieldProblem } from '@/app/_ui/field-problem';
import { bookCase } from '@/db/operations/book-case';
import type { Problem } from '@/lib/identity/result';
import { parseBooking } from '@/lib/theatre/booking';
import { HOSPITAL_ZONE } from '@/lib/theatre/localTime';

/** Books the case and leads to its plan; the problems, each at its field, when something must be put right. */
export async function bookCaseAction(_before: FieldProblem[], form: FormData): Promise<FieldProblem[]> {
  try {
    return await book(form);
  } catch (error) {
    return [{ path: '', sentence: storageSentence(error) }];
  }
}

async function book(form: FormData): Promise<FieldProblem[]> {
  const { db, person } = await enter('/cases/new');
  const text = (name: string) => {
    const value = form.get(name);
    return typeof value === 'string' ? value.trim() : '';
  };
  const booking = parseBooking(
    {
      theatreId: text('theatreId'),
      date: text('date'),
      time: text('time'),
      which: text('which') || undefined,
      minutes: text('minutes'),
      region: text('region'),
      limb: text('limb'),
      surgeonId: text('surgeonId'),
      urgency: text('urgency'),
      startId: text('startId') || null,
      cardId: text('cardId') || null,
    },
    HOSPITAL_ZONE,
  );
  if (!booking.ok) return booking.problems.map(atField);
  const booked = await bookCase({
    db,
    now: now(),
    newId,
    draw: drawReference,
    hospitalLetters: HOSPITAL_LETTERS,
    person,
    booking: booking.value,
  });
  if (!booked.ok) return booked.problems.map(atField);
  // a case without a plan asks for no set
  if (booking.value.startId !== null) await planAgain(db, person, 'book-case');
  redirect(`/cases/${booked.value.id}/plan`);
}

function atField({ path, message }: Problem): FieldProblem {
  return { path: path.join('.'), sentence: message };
}
