import 'server-only';
import { cookies, headers } from 'next/headers';
import { cache } from 'react';
import { type Database, readAs } from '@/db/client';
import type { BegunSession, SignInMethod } from '@/db/operations/people/begin-session';
import { touchSession } from '@/db/operations/people/touch-session';
import type { Person } from '@/db/queries/people';
import { sessionOfToken } from '@/db/queries/peopleSessions';
import { readSetting } from '@/db/queries/settings';
import { ticketOf } from '@/db/secrets';
import type { SessionId, TokenId, WorkstationId } from '@/lib/identity/ids';
import { isAlive, isWorthNoting } from '@/lib/people/session';
import { storageFault } from '@/lib/running/plainReason';
import { now } from './clock';
import { database } from './database';
import { noteWhoAsks } from './running-server';

/**
 * The prefix makes the browser refuse the cookie unless it is Secure, for this host alone and for every path, so that no
 * neighbouring host can plant one. On this machine browsers take `http://localhost` for secure.
 */
const SESSION_COOKIE = '__Host-session';
const KEPT = { httpOnly: true, secure: true, sameSite: 'lax', path: '/' } as const;

/** Who asks, by which session or token, and the store as they may read it. */
export interface Access {
  db: Database;
  person: Person;
  /** Without an id where it is a token that asks. */
  session: { id: SessionId | null; workstationId: WorkstationId | null };
  /** The token that acts for the person; `null` where they are here themselves. */
  token: { id: TokenId; name: string } | null;
}

/** What the page of a session is told of it beside: how its entries are marked, and when it goes. */
export interface PresentSession extends Access {
  session: { id: SessionId; workstationId: WorkstationId | null; method: SignInMethod };
  token: null;
  ticket: string;
  workstationName: string | null;
  mustChangePassword: boolean;
  idleMinutes: number;
}

/** The session of this request, or `null`: nobody signed in, or it is over. Asked once a request. */
export const presentSession = cache(async (): Promise<PresentSession | null> => {
  const token = (await cookies()).get(SESSION_COOKIE)?.value;
  if (!token) return null;
  const db = database();
  const [found, { idleMinutes }] = await Promise.all([
    sessionOfToken(db, token),
    readSetting(db.read, 'signIn'),
  ]);
  const at = now();
  if (!found || !isAlive(found.times, at, idleMinutes)) return null;
  noteWhoAsks(found.person.id);
  const quietly = (await headers()).has('x-quietly');
  if (!quietly && isWorthNoting(found.times, at)) await noteSeen(db, found.id, at);
  const { id, person, workstation, method, mustChangePassword } = found;
  return {
    db: readAs(db, person),
    person,
    session: { id, workstationId: workstation?.id ?? null, method },
    token: null,
    ticket: ticketOf(token),
    workstationName: workstation?.name ?? null,
    mustChangePassword,
    idleMinutes,
  };
});

/** The session of somebody who is here themselves, for an act that no token may do. */
export function ownSession({ session }: Pick<Access, 'session'>): SessionId {
  if (session.id === null) throw new Error('a token was let into what needs a session');
  return session.id;
}

/** A disk that takes no writes ends nobody's reading: the session then counts as seen when it last could be noted. */
async function noteSeen(db: Database, sessionId: SessionId, seenAt: string): Promise<void> {
  try {
    await touchSession({ db, sessionId, seenAt });
  } catch (error) {
    if (storageFault(error) === null) throw error;
  }
}

/** Gives the browser its new session in place of the one it had. */
export async function keepSession({ token }: Pick<BegunSession, 'token'>): Promise<void> {
  (await cookies()).set(SESSION_COOKIE, token, KEPT);
}

export async function forgetSession(): Promise<void> {
  (await cookies()).set(SESSION_COOKIE, '', { ...KEPT, maxAge: 0 });
}
