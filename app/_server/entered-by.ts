import 'server-only';
import { z } from 'zod';
import type { Person } from '@/db/queries/people';
import { sessionOfTicket } from '@/db/queries/peopleSessions';
import type { SessionId } from '@/lib/identity/ids';
import { entryInSession } from '@/lib/people/ticket';
import { now } from './clock';
import type { Access } from './session';

/** The session an entry was made in, as the screen marks it. */
export const sessionMark = z.strictObject({ id: z.string().max(80), ticket: z.string().max(200) });

/**
 * Who made an entry: the person of the session it was made in, who need not be the one at the screen when it arrives.
 * `null` where the mark is not good, or the entry is from outside that session or comes long after it.
 */
export async function enteredBy(
  { db }: Pick<Access, 'db'>,
  mark: z.infer<typeof sessionMark>,
  doneAt: string,
): Promise<{ person: Person; sessionId: SessionId } | null> {
  const session = await sessionOfTicket(db, mark.id, mark.ticket);
  if (!session || entryInSession(session.times, doneAt, now()) !== 'good') return null;
  return { person: session.person, sessionId: session.id };
}
