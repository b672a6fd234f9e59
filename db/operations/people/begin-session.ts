import { hashCode, ticketOf } from '@/db/secrets';
import { type NewId, type PersonId, type SessionId, sessionId, type WorkstationId } from '@/lib/identity/ids';
import type { Queries } from '../../client';
import { readSetting } from '../../queries/settings';
import { sessions } from '../../schema';
import { forgetSessions } from './forget-sessions';

export type SignInMethod = 'password' | 'badgeAndPin' | 'oneTimeCode';

/** What the browser is given, once: the token goes into its cookie, the ticket into the page. */
export interface BegunSession {
  id: SessionId;
  token: string;
  ticket: string;
}

interface BeginSession {
  now: string;
  newId: NewId;
  newToken: () => string;
  personId: PersonId;
  method: SignInMethod;
  workstationId: WorkstationId | null;
}

/**
 * Begins a session inside the caller's transaction, and removes those that are long over: nobody waits for that longer
 * than for their own password. Whoever calls it has proved who the person is.
 */
export async function beginSession(write: Queries, request: BeginSession): Promise<BegunSession> {
  const { now, newId, newToken, personId, method, workstationId } = request;
  await forgetSessions(write, now);
  const { absoluteHours } = await readSetting(write, 'signIn');
  const id = sessionId.parse(newId('session'));
  const token = newToken();
  const ticket = ticketOf(token);
  await write.insert(sessions).values({
    id,
    tokenHash: hashCode(token),
    ticketHash: hashCode(ticket),
    personId,
    workstationId,
    method,
    beganAt: now,
    seenAt: now,
    endsAt: new Date(Date.parse(now) + absoluteHours * 3_600_000).toISOString(),
    endedAt: null,
  });
  return { id, token, ticket };
}
