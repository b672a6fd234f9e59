import { and, eq, isNull } from 'drizzle-orm';
import type { PersonId, SessionId } from '@/lib/identity/ids';
import type { Database } from '../../client';
import { sessions } from '../../schema';

/** Signs a person out of one of their own sessions. Somebody else's, or one that is over, is left as it is. */
export async function endSession({
  db,
  now,
  person,
  sessionId,
}: {
  db: Pick<Database, 'tx'>;
  now: string;
  person: { id: PersonId };
  sessionId: SessionId;
}): Promise<void> {
  await db.tx(async (write) => {
    await write
      .update(sessions)
      .set({ endedAt: now })
      .where(and(eq(sessions.id, sessionId), eq(sessions.personId, person.id), isNull(sessions.endedAt)));
  });
}
