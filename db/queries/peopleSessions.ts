import { eq } from 'drizzle-orm';
import { hashCode, isCode } from '@/db/secrets';
import {
  sessionId as parsedSessionId,
  type SessionId,
  type WorkstationId,
  workstationId,
} from '@/lib/identity/ids';
import type { SessionTimes } from '@/lib/people/session';
import type { Database, Queries } from '../client';
import type { SignInMethod } from '../operations/people/begin-session';
import { credentials, people, sessions, workstations } from '../schema';
import { type Person, personFromRow } from './people';

/** A session as it is kept, with its person. Whether it is still good is for `lib/people/session.ts` to say. */
export interface SessionOnFile {
  id: SessionId;
  person: Person;
  times: SessionTimes;
  workstation: { id: WorkstationId; name: string } | null;
  method: SignInMethod;
  mustChangePassword: boolean;
}

/** The session a browser's token stands for. Nobody is known yet, so it is asked for nobody. */
export async function sessionOfToken(
  { read }: Pick<Database, 'read'>,
  token: string,
): Promise<SessionOnFile | null> {
  return (await sessionsWhere(read, eq(sessions.tokenHash, hashCode(token))))[0]?.session ?? null;
}

/** The session a ticket stands for, dead or alive: what was entered in it keeps its person. */
export async function sessionOfTicket(
  { read }: Pick<Database, 'read'>,
  id: string,
  ticket: string,
): Promise<SessionOnFile | null> {
  const [found] = await sessionsWhere(read, eq(sessions.id, id));
  return found && isCode(found.ticketHash, ticket) ? found.session : null;
}

async function sessionsWhere(
  read: Queries,
  condition: ReturnType<typeof eq>,
): Promise<{ session: SessionOnFile; ticketHash: string }[]> {
  const rows = await read
    .select({ session: sessions, person: people, workstation: workstations, credential: credentials })
    .from(sessions)
    .innerJoin(people, eq(people.id, sessions.personId))
    .leftJoin(workstations, eq(workstations.id, sessions.workstationId))
    .leftJoin(credentials, eq(credentials.personId, sessions.personId))
    .where(condition);
  return rows.map(({ session, person, workstation, credential }) => ({
    ticketHash: session.ticketHash,
    session: {
      id: parsedSessionId.parse(session.id),
      person: personFromRow(person),
      times: {
        beganAt: session.beganAt,
        seenAt: session.seenAt,
        endsAt: session.endsAt,
        endedAt: session.endedAt,
      },
      workstation: workstation && { id: workstationId.parse(workstation.id), name: workstation.name },
      method: session.method as SignInMethod,
      mustChangePassword: credential?.mustChangePassword ?? false,
    },
  }));
}
