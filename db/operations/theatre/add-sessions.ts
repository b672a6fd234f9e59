import { eq } from 'drizzle-orm';
import type { z } from 'zod';
import { type NewId, theatreSessionId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import type { SessionSpan } from '@/lib/theatre/inSession';
import { type sessionRequest, sessionSpan, weekly } from '@/lib/theatre/session';
import { theatreListWords as words } from '@/lib/wording/theatre-list';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { theatreSessions, theatres } from '../../schema';
import { spanProblems, surgeonProblems } from './sessions';

interface AddSessions {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  asked: z.output<typeof sessionRequest>;
  /** The hospital's time zone where it is not its own. */
  zone?: string;
}

/** Enters when a theatre works, on one day or week after week at the same times on the wall: all of them or none. */
export async function addSessions({
  db,
  now,
  newId,
  person,
  asked,
  zone,
}: AddSessions): Promise<Outcome<{ ids: string[] }, never>> {
  if (!may(person, 'keepTheatreSessions'))
    return refused('notPermitted', words.mayNotKeepSessions(person.name));
  return db.tx(async (write) => {
    const { theatreId, surgeonId, from, until } = asked;
    const [theatre] = await write.select().from(theatres).where(eq(theatres.id, theatreId));
    if (!theatre) return refused('notFound', words.noSuchTheatre);
    const problems: Problem[] = await surgeonProblems(write, surgeonId);
    const spans: (SessionSpan & { date: string })[] = [];
    for (const date of weekly(asked.date, asked.weeks)) {
      const span = sessionSpan({ date, from, until }, zone);
      if (!span.ok) problems.push(...span.problems);
      else {
        problems.push(...(await spanProblems(write, { theatreId, ...span.value }, now)));
        spans.push({ date, ...span.value });
      }
    }
    if (problems.length > 0) return refusedFor(problems);
    const ids: string[] = [];
    for (const { date, startsAt, endsAt } of spans) {
      const id = theatreSessionId.parse(newId('theatreSession'));
      await write
        .insert(theatreSessions)
        .values({ id, theatreId, sessionDate: date, startsAt, endsAt, surgeonId, revision: 1 });
      await appendLedger(write, {
        doneAt: now,
        enteredAt: now,
        personId: person.id,
        action: 'add-session',
        subjectKind: 'theatreSession',
        subjectId: id,
        detail: { theatreId, startsAt, endsAt, surgeonId },
      });
      ids.push(id);
    }
    return { ok: true, value: { ids } };
  });
}
