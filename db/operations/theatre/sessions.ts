import { and, asc, eq, gt, lt, ne } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import type { SessionSpan } from '@/lib/theatre/inSession';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import type { Database, Queries } from '../../client';
import type { Person } from '../../queries/people';
import { people, theatreSessions, theatres } from '../../schema';

export type SessionRow = typeof theatreSessions.$inferSelect;

/** What every act on one session is asked with. */
export interface SessionAct {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  sessionId: string;
  /** The revision of the session that was seen. */
  baseRevision: number;
}

/** One act on one session that is not over: permission, session and revision are checked here, inside its write. */
export async function atSession<T>(
  { db, now, person, sessionId, baseRevision }: SessionAct,
  work: (write: Queries, row: SessionRow) => Promise<Outcome<T, { revision: number }>>,
): Promise<Outcome<T, { revision: number }>> {
  if (!may(person, 'keepTheatreSessions'))
    return refused('notPermitted', words.mayNotKeepSessions(person.name));
  return db.tx(async (write) => {
    const [row] = await write.select().from(theatreSessions).where(eq(theatreSessions.id, sessionId));
    if (!row) return refused('notFound', words.noSuchSession);
    const { revision } = row;
    if (revision !== baseRevision) return refused('conflict', words.sessionChanged, { revision });
    if (row.endsAt <= now) return refused('frozen', words.sessionOver);
    return work(write, row);
  });
}

/** What is wrong with who has a session. */
export async function surgeonProblems(write: Queries, surgeonId: string | null): Promise<Problem[]> {
  if (surgeonId === null) return [];
  const [surgeon] = await write.select().from(people).where(eq(people.id, surgeonId));
  return surgeon?.role === 'surgeon'
    ? []
    : [{ path: ['surgeonId'], code: 'surgeon-unknown', message: words.noSuchSurgeon }];
}

/** What is wrong with when a session is: it is over already, or the theatre has another over some of that time. */
export async function spanProblems(
  write: Queries,
  { theatreId, startsAt, endsAt }: SessionSpan & { theatreId: string },
  now: string,
  except: string | null = null,
): Promise<Problem[]> {
  const { date } = wallClock(startsAt);
  if (endsAt <= now) return [{ path: ['date'], code: 'past', message: words.sessionInPast(dayWords(date)) }];
  const [other] = await write
    .select({ session: theatreSessions, theatre: theatres.name })
    .from(theatreSessions)
    .innerJoin(theatres, eq(theatres.id, theatreSessions.theatreId))
    .where(
      and(
        eq(theatreSessions.theatreId, theatreId),
        lt(theatreSessions.startsAt, endsAt),
        gt(theatreSessions.endsAt, startsAt),
        except === null ? undefined : ne(theatreSessions.id, except),
      ),
    )
    .orderBy(asc(theatreSessions.startsAt))
    .limit(1);
  if (!other) return [];
  const at = (instant: string) => wallClock(instant).time;
  const { session, theatre } = other;
  const day = dayWords(wallClock(session.startsAt).date);
  const message = words.sessionsOverlap(theatre, day, at(session.startsAt), at(session.endsAt));
  return [{ path: ['from'], code: 'sessions-overlap', message }];
}
