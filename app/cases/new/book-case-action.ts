'use server';

import { redirect } from 'next/navigation';
import { bookNewCase } from '@/app/_server/book-new-case';
import { enter } from '@/app/_server/enter';
import { storageSentence } from '@/app/_server/storage-answer';
import type { FieldProblem } from '@/app/_ui/field-problem';
import type { Problem } from '@/lib/identity/result';

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
  const booked = await bookNewCase(
    { db, person },
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
  );
  if (!booked.ok) return booked.problems.map(atField);
  redirect(`/cases/${booked.value.id}/plan`);
}

function atField({ path, message }: Problem): FieldProblem {
  return { path: path.join('.'), sentence: message };
}
