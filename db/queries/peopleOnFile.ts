import { and, asc, desc, eq, gt, isNull, max } from 'drizzle-orm';
import { type PersonId, type SessionId, sessionId } from '@/lib/identity/ids';
import { endOfSession } from '@/lib/people/session';
import { mayRead, type Reading } from '../reader';
import { credentials, people, sessions, signInDelays, workstations } from '../schema';
import { type Person, personFromRow } from './people';
import { readSetting } from './settings';

/** Somebody as an administrator sees them: which ways in they have, never a secret. */
export interface PersonOnFile extends Person {
  leftAt: string | null;
  hasPin: boolean;
  hasBadge: boolean;
  mustChangePassword: boolean;
  lastSeenAt: string | null;
}

/** Everybody who works or worked here: those who left last. */
export async function listPeopleOnFile(db: Reading): Promise<PersonOnFile[]> {
  mayRead(db, 'readPeople');
  const [rows, seen] = await Promise.all([
    db.read
      .select({ person: people, kept: credentials })
      .from(people)
      .leftJoin(credentials, eq(credentials.personId, people.id))
      .orderBy(asc(people.leftAt), asc(people.name)),
    db.read
      .select({ personId: sessions.personId, at: max(sessions.seenAt) })
      .from(sessions)
      .groupBy(sessions.personId),
  ]);
  const seenAt = new Map(seen.map(({ personId, at }) => [personId, at]));
  return rows.map(({ person, kept }) => ({
    ...personFromRow(person),
    leftAt: person.leftAt,
    hasPin: kept?.pinHash !== null && kept?.pinHash !== undefined,
    hasBadge: kept?.badgeHash !== null && kept?.badgeHash !== undefined,
    mustChangePassword: kept?.mustChangePassword ?? false,
    lastSeenAt: seenAt.get(person.id) ?? null,
  }));
}

/** Where a person has to wait just now after wrong tries, and until when. */
export async function waitsOf(
  db: Reading,
  id: PersonId,
  now: string,
): Promise<{ place: string | null; until: string }[]> {
  mayRead(db, 'readPeople');
  const rows = await db.read
    .select({ until: signInDelays.nextTryAt, place: workstations.name })
    .from(signInDelays)
    .leftJoin(workstations, eq(workstations.id, signInDelays.placeKey))
    .where(and(eq(signInDelays.personKey, id), gt(signInDelays.nextTryAt, now)));
  return rows;
}

/** One of a person's own sessions that is still good. */
export interface OwnSession {
  id: SessionId;
  workstation: string | null;
  method: string;
  beganAt: string;
  seenAt: string;
}

export async function listOwnSessions(db: Reading, id: PersonId, now: string): Promise<OwnSession[]> {
  mayRead(db, 'ownAccount');
  const { idleMinutes } = await readSetting(db.read, 'signIn');
  const rows = await db.read
    .select({ session: sessions, workstation: workstations.name })
    .from(sessions)
    .leftJoin(workstations, eq(workstations.id, sessions.workstationId))
    .where(and(eq(sessions.personId, id), isNull(sessions.endedAt)))
    .orderBy(desc(sessions.beganAt));
  return rows
    .filter(({ session }) => endOfSession(session, idleMinutes) > now)
    .map(({ session, workstation }) => ({
      id: sessionId.parse(session.id),
      workstation,
      method: session.method,
      beganAt: session.beganAt,
      seenAt: session.seenAt,
    }));
}
