import 'server-only';
import { cookies } from 'next/headers';
import { cache } from 'react';
import { sessionOfToken } from '@/db/queries/peopleSessions';
import { type Workstation, workstationOfToken } from '@/db/queries/workstations';
import type { PersonId, WorkstationId } from '@/lib/identity/ids';
import { database } from './database';

/** Marks this browser as an enrolled workstation; kept for as long as the browser keeps anything. */
const WORKSTATION_COOKIE = '__Host-workstation';
/** The last session somebody had in this browser, over by now: a guesser elsewhere does not slow its person here. */
const BEFORE_COOKIE = '__Host-before';
const KEPT = { httpOnly: true, secure: true, sameSite: 'lax', path: '/' } as const;
const YEARS = 60 * 60 * 24 * 365 * 5;
const HALF_A_YEAR = 60 * 60 * 24 * 182;

/** The enrolled workstation this browser is, or `null`. */
export const presentWorkstation = cache(async (): Promise<Workstation | null> => {
  const token = (await cookies()).get(WORKSTATION_COOKIE)?.value;
  return token ? workstationOfToken(database(), token) : null;
});

/**
 * Where a person's tries are counted: at a workstation, in a browser they were signed in with before (the "device
 * cookie" of the OWASP guidance on slowing guesses), or at all other places together.
 */
export async function placeOf(
  person: { id: PersonId } | null,
): Promise<{ key: string; workstationId: WorkstationId | null }> {
  const workstation = await presentWorkstation();
  if (workstation) return { key: workstation.id, workstationId: workstation.id };
  const before = (await cookies()).get(BEFORE_COOKIE)?.value;
  const session = before ? await sessionOfToken(database(), before) : null;
  const known = session !== null && session.person.id === person?.id;
  return { key: known ? session.id : 'elsewhere', workstationId: null };
}

export async function rememberBrowser(token: string): Promise<void> {
  (await cookies()).set(BEFORE_COOKIE, token, { ...KEPT, maxAge: HALF_A_YEAR });
}

export async function keepWorkstation(token: string): Promise<void> {
  (await cookies()).set(WORKSTATION_COOKIE, token, { ...KEPT, maxAge: YEARS });
}
