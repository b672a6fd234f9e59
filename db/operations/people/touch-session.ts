import { and, eq, isNull, lt } from 'drizzle-orm';
import type { SessionId } from '@/lib/identity/ids';
import type { Database } from '../../client';
import { sessions } from '../../schema';

/** Notes that a session was heard of. One that was ended meanwhile stays ended, and time never goes back. */
export async function touchSession({
  db,
  sessionId,
  seenAt,
}: {
  db: Pick<Database, 'tx'>;
  sessionId: SessionId;
  seenAt: string;
}): Promise<void> {
  await db.tx(async (write) => {
    await write
      .update(sessions)
      .set({ seenAt })
      .where(and(eq(sessions.id, sessionId), isNull(sessions.endedAt), lt(sessions.seenAt, seenAt)));
  });
}
