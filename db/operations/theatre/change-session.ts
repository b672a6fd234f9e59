import { and, eq } from 'drizzle-orm';
import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { sessionSpan } from '@/lib/theatre/session';
import { appendLedger } from '../../ledger';
import { theatreSessions } from '../../schema';
import { atSession, type SessionAct, spanProblems, surgeonProblems } from './sessions';

interface ChangeSession extends SessionAct {
  date: PlainDate;
  /** `HH:MM` on the wall. */
  from: string;
  until: string;
  surgeonId: string | null;
  /** The hospital's time zone where it is not its own. */
  zone?: string;
}

/** Changes when one session is, or whose it is. */
export async function changeSession(
  request: ChangeSession,
): Promise<Outcome<{ revision: number }, { revision: number }>> {
  const { now, person, date, from, until, surgeonId, zone } = request;
  return atSession(request, async (write, row) => {
    const span = sessionSpan({ date, from, until }, zone);
    const problems = [
      ...(await surgeonProblems(write, surgeonId)),
      ...(span.ok
        ? await spanProblems(write, { theatreId: row.theatreId, ...span.value }, now, row.id)
        : span.problems),
    ];
    if (!span.ok || problems.length > 0) return refusedFor(problems);
    const { startsAt, endsAt } = span.value;
    const revision = row.revision + 1;
    await write
      .update(theatreSessions)
      .set({ sessionDate: date, startsAt, endsAt, surgeonId, revision })
      .where(and(eq(theatreSessions.id, row.id), eq(theatreSessions.revision, row.revision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'change-session',
      subjectKind: 'theatreSession',
      subjectId: row.id,
      detail: {
        theatreId: row.theatreId,
        before: { startsAt: row.startsAt, endsAt: row.endsAt, surgeonId: row.surgeonId },
        after: { startsAt, endsAt, surgeonId },
      },
    });
    return { ok: true, value: { revision } };
  });
}
