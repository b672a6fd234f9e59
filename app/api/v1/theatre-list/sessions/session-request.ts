import { z } from 'zod';
import type { Answer } from '@/app/_server/answer';
import { newId, now } from '@/app/_server/clock';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import type { Access } from '@/app/_server/session';
import type { SessionAct } from '@/db/operations/theatre/sessions';
import { theatreSessionId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';

/** What every act on a session is sent with. */
export const sessionMembers = { baseRevision: z.number().int().positive() };

/** Reads an act on the session of the address, does it, and answers with what came of it. */
export async function actOnSession<S extends z.ZodType<{ baseRevision: number }>, T>(
  { db, person, request, params }: Access & { request: Request; params: { id: string } },
  members: S,
  act: (asked: SessionAct, body: z.output<S>) => Promise<Outcome<T, { revision: number }>>,
): Promise<Answer<T>> {
  const id = theatreSessionId.safeParse(params.id);
  if (!id.success) return noSuch('session');
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const { baseRevision } = body.value;
  return outcomeAnswer(
    await act({ db, person, now: now(), newId, sessionId: id.data, baseRevision }, body.value),
  );
}
