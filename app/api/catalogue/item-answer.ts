import { z } from 'zod';
import { problemResponse } from '@/app/_server/problem-response';
import type { ItemOutcome, ItemRefusal } from '@/lib/catalogue/refusal';

/** A form as sent: flat texts. Longer texts than any field allows are still let through, to be refused beside the field. */
export const draftMember = z
  .record(z.string().max(80), z.string().max(50_000))
  .refine((draft) => Object.keys(draft).length <= 2_000, 'too many fields');

const REFUSED: Record<ItemRefusal['because'], { status: number; title: string }> = {
  notFound: { status: 404, title: 'Not found' },
  notPermitted: { status: 403, title: 'Not permitted' },
  conflict: { status: 409, title: 'Somebody else saved meanwhile' },
  invalid: { status: 422, title: 'The item can’t be taken as it is' },
};

/** What became of a write to the catalogue, as an answer: the value, or every problem with its path. */
export function itemAnswer<T>(outcome: ItemOutcome<T>, status = 200): Response {
  if (outcome.ok) return Response.json(outcome.value, { status });
  const { because, problems, current } = outcome;
  return problemResponse(REFUSED[because].status, REFUSED[because].title, problems, { because, current });
}
