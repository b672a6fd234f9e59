import { and, asc, eq, gte } from 'drizzle-orm';
import type { Outcome } from '@/lib/identity/refusal';
import { plainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { weekdayOf } from '@/lib/time/zone';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { theatreSessions } from '../../schema';
import { atSession, type SessionAct, type SessionRow } from './sessions';

interface RemoveSession extends SessionAct {
  /** Also those of later weeks: same theatre, weekday, times on the wall and surgeon. */
  andLater: boolean;
  /** The hospital's time zone where it is not its own. */
  zone?: string;
}

/** Takes a session out, or it and those like it in later weeks. Its cases stay; they are out of hours then. */
export async function removeSession(
  request: RemoveSession,
): Promise<Outcome<{ removed: number }, { revision: number }>> {
  const { now, person, andLater, zone } = request;
  return atSession(request, async (write, row) => {
    const gone = andLater ? await likeIt(write, row, zone) : [row];
    for (const { id, theatreId, startsAt, endsAt, surgeonId } of gone) {
      await write.delete(theatreSessions).where(eq(theatreSessions.id, id));
      await appendLedger(write, {
        doneAt: now,
        enteredAt: now,
        personId: person.id,
        action: 'remove-session',
        subjectKind: 'theatreSession',
        subjectId: id,
        detail: { theatreId, startsAt, endsAt, surgeonId },
      });
    }
    return { ok: true, value: { removed: gone.length } };
  });
}

async function likeIt(write: Queries, row: SessionRow, zone?: string): Promise<SessionRow[]> {
  const rows = await write
    .select()
    .from(theatreSessions)
    .where(
      and(eq(theatreSessions.theatreId, row.theatreId), gte(theatreSessions.sessionDate, row.sessionDate)),
    )
    .orderBy(asc(theatreSessions.startsAt));
  const like = (one: SessionRow) =>
    [
      weekdayOf(plainDate.parse(one.sessionDate)),
      wallClock(one.startsAt, zone).time,
      wallClock(one.endsAt, zone).time,
      one.surgeonId,
    ].join();
  return rows.filter((one) => like(one) === like(row));
}
