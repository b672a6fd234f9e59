import 'server-only';
import { z } from 'zod';
import type { Answer, Refused } from '@/app/_server/answer';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { problemResponse } from '@/app/_server/problem-response';
import { listPeople } from '@/db/queries/people';
import type { Reading } from '@/db/reader';
import { problemsFromZod } from '@/lib/identity/result';
import type { PlanOutcome } from '@/lib/plans/refusal';

/** A write's outcome as HTTP: the value, or the refusal with the name of whoever wrote what stands. */
export async function planAnswer<T, S extends number = 200>(
  db: Reading,
  outcome: PlanOutcome<T>,
  status?: S,
): Promise<Answer<T, S>> {
  if (outcome.ok) return outcomeAnswer(outcome, status);
  const { current } = outcome.refusal;
  const writer = current
    ? ((await listPeople(db)).find(({ id }) => id === current.writtenBy)?.name ?? null)
    : null;
  return outcomeAnswer(outcome, status, { currentWriter: writer });
}

/** A request's own members, parsed; every fault with its path. */
export function parseMembers<S extends z.ZodType>(
  schema: S,
  raw: unknown,
): { ok: true; value: z.output<S> } | { ok: false; response: Refused } {
  const parsed = schema.safeParse(raw);
  if (parsed.success) return { ok: true, value: parsed.data };
  return {
    ok: false,
    response: problemResponse(422, 'The request can’t be taken as it is', problemsFromZod(parsed.error)),
  };
}

export const savedRevision = z.number('the revision you saw').int().positive();
