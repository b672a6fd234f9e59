import { z } from 'zod';
import type { Answer } from '@/app/_server/answer';
import { newId, now } from '@/app/_server/clock';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import type { Access } from '@/app/_server/session';
import type { KitStepRequest } from '@/db/operations/caseLife/at-kit';
import { caseId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';

/** What every step of a kit is sent with; 0 where there was no kit yet. */
export const kitMembers = { baseRevision: z.number().int().min(0) };

/** Reads a step of the kit of the case in the address, takes it, and answers with what came of it. */
export async function actOnKit<S extends z.ZodType<{ baseRevision: number }>, T>(
  { db, person, request, params }: Access & { request: Request; params: { id: string } },
  members: S,
  act: (request: KitStepRequest, body: z.output<S>) => Promise<Outcome<T, never>>,
): Promise<Answer<T>> {
  const id = caseId.safeParse(params.id);
  if (!id.success) return noSuch('case');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const { baseRevision } = body.value;
  return outcomeAnswer(
    await act({ db, person, now: now(), newId, caseId: id.data, baseRevision }, body.value),
  );
}
