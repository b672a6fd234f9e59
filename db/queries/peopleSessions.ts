import { eq, sql } from 'drizzle-orm';
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
import { prepared } from '../prepared';
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
  const row = sessionByToken(read).get({ tokenHash: hashCode(token) });
  return row ? sessionFromRow(row) : null;
}

/** The session a ticket stands for, dead or alive: what was entered in it keeps its person. */
export async function sessionOfTicket(
  { read }: Pick<Database, 'read'>,
  id: string,
  ticket: string,
): Promise<SessionOnFile | null> {
  const row = sessionById(read).get({ id });
  return row && isCode(row.session.ticketHash, ticket) ? sessionFromRow(row) : null;
}

const sessionRows = (read: Queries) =>
  read
    .select({ session: sessions, person: people, workstation: workstations, credential: credentials })
    .from(sessions)
    .innerJoin(people, eq(people.id, sessions.personId))
    .leftJoin(workstations, eq(workstations.id, sessions.workstationId))
    .leftJoin(credentials, eq(credentials.personId, sessions.personId));

const sessionByToken = prepared((read) =>
  sessionRows(read)
    .where(eq(sessions.tokenHash, sql.placeholder('tokenHash')))
    .prepare(),
);
const sessionById = prepared((read) =>
  sessionRows(read)
    .where(eq(sessions.id, sql.placeholder('id')))
    .prepare(),
);

function sessionFromRow({
  session,
  person,
  workstation,
  credential,
}: NonNullable<ReturnType<ReturnType<typeof sessionById>['get']>>): SessionOnFile {
  return {
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
  };
}
