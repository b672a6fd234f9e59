import { and, asc, desc, eq, gt, lt } from 'drizzle-orm';
import { type TheatreId, type TheatreSessionId, theatreId, theatreSessionId } from '@/lib/identity/ids';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { HOSPITAL_ZONE } from '@/lib/theatre/localTime';
import { startOfDay } from '@/lib/time/zone';
import { mayRead, type Reading } from '../../reader';
import { ledger, people, theatreSessions, theatres } from '../../schema';

/** A stretch of time that a theatre works. */
export interface ListedSession {
  id: TheatreSessionId;
  theatreId: TheatreId;
  date: PlainDate;
  startsAt: string;
  endsAt: string;
  /** Whose it is; `null`: anybody's. */
  surgeon: { id: string; name: string } | null;
  revision: number;
}

/** The sessions that lie on these days, those that run into the first from the day before included; by time. */
export async function sessionsOn(db: Reading, from: PlainDate, before: PlainDate): Promise<ListedSession[]> {
  mayRead(db, 'readHospital');
  const at = (date: PlainDate) => new Date(startOfDay(date, HOSPITAL_ZONE)).toISOString();
  const rows = await db.read
    .select({ session: theatreSessions, surgeon: people.name })
    .from(theatreSessions)
    .leftJoin(people, eq(people.id, theatreSessions.surgeonId))
    .where(and(lt(theatreSessions.startsAt, at(before)), gt(theatreSessions.endsAt, at(from))))
    .orderBy(asc(theatreSessions.startsAt), asc(theatreSessions.theatreId));
  return rows.map(({ session, surgeon }) => ({
    id: theatreSessionId.parse(session.id),
    theatreId: theatreId.parse(session.theatreId),
    date: plainDate.parse(session.sessionDate),
    startsAt: session.startsAt,
    endsAt: session.endsAt,
    surgeon:
      session.surgeonId === null ? null : { id: session.surgeonId, name: surgeon ?? session.surgeonId },
    revision: session.revision,
  }));
}

/** A theatre with its lead, and why that is what it is. */
interface TheatreLead {
  id: TheatreId;
  name: string;
  /** `null`: as long as the hospital's setting says. */
  leadMinutes: number | null;
  revision: number;
  /** When, by whom and why it was last changed; `null` while it never was. */
  changed: { at: string; by: string; because: string } | null;
}

/** Every theatre by name, with how long before a case its sets must stand there. */
export async function theatreLeads(db: Reading): Promise<TheatreLead[]> {
  mayRead(db, 'readHospital');
  const [rooms, changes] = await Promise.all([
    db.read.select().from(theatres).orderBy(asc(theatres.name)),
    db.read
      .select({ id: ledger.subjectId, at: ledger.doneAt, by: people.name, detail: ledger.detail })
      .from(ledger)
      .leftJoin(people, eq(people.id, ledger.personId))
      .where(and(eq(ledger.subjectKind, 'theatre'), eq(ledger.action, 'change-theatre-lead')))
      .orderBy(desc(ledger.seq)),
  ]);
  return rooms.map(({ id, name, leadMinutes, revision }) => {
    const last = changes.find((change) => change.id === id);
    return {
      id: theatreId.parse(id),
      name,
      leadMinutes,
      revision,
      changed: last
        ? { at: last.at, by: last.by ?? '', because: (last.detail as { because: string }).because }
        : null,
    };
  });
}
