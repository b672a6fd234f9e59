import 'server-only';
import { z } from 'zod';
import type { Person } from '@/db/queries/people';
import type { Delivered } from '@/lib/bench/outbox';
import type { SessionId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { tokenWords } from '@/lib/wording/tokens';
import type { Answer } from './answer';
import { enteredBy, sessionMark } from './entered-by';
import { jsonAnswer } from './json-answer';
import { outcomeAnswer, readBody } from './outcome-answer';
import type { Access } from './session';

const sent = z.looseObject({ id: z.string().max(80), doneAt: z.string().max(40) });
const members = z.strictObject({
  entries: z
    .array(z.strictObject({ entry: sent, session: sessionMark }))
    .min(1)
    .max(50),
});

/** The body of a delivery of such entries. */
export const deliveryOf = (entry: z.ZodType) =>
  z.strictObject({
    entries: z
      .array(z.strictObject({ entry, session: sessionMark }))
      .min(1)
      .max(50),
  });

/**
 * Makes entries that were kept in a browser durable, in order, each as its own session's person, and answers for each: the
 * answer to one sent before is what it was then.
 *
 * @param unknownSession what is said where it can't be told who made an entry
 */
export async function deliverEntries(
  { db, token, request }: Pick<Access, 'db' | 'token'> & { request: Request },
  unknownSession: string,
  record: (
    entry: z.infer<typeof sent>,
    by: { person: Person; sessionId: SessionId },
  ) => Promise<Outcome<{ enteredAt: string }, unknown>>,
): Promise<Answer<{ delivered: Delivered[] }>> {
  if (token !== null) return outcomeAnswer(refused('notPermitted', tokenWords.noSession));
  const body = await readBody(request, members);
  if (!body.ok) return body.response;
  const delivered: Delivered[] = [];
  for (const { entry, session } of body.value.entries) {
    const by = await enteredBy({ db }, session, entry.doneAt);
    if (!by) {
      delivered.push({ id: entry.id, ok: false, because: 'notPermitted', sentence: unknownSession });
      continue;
    }
    const done = await record(entry, by);
    delivered.push(
      done.ok
        ? { id: entry.id, ok: true, enteredAt: done.value.enteredAt }
        : {
            id: entry.id,
            ok: false,
            because: done.refusal.because,
            sentence: done.refusal.problems.map(({ message }) => message).join(' '),
          },
    );
  }
  return jsonAnswer({ delivered });
}
