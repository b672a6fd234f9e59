import { and, eq, isNull } from 'drizzle-orm';
import type { FeedId } from '@/lib/identity/ids';
import type { Database } from '../../client';
import { calendarFeeds } from '../../schema';

/** Notes that a feed was read, for its owner to see. No work of the hospital, so the ledger does not speak of it. */
export async function noteRead({
  db,
  feedId,
  readAt,
}: {
  db: Pick<Database, 'tx'>;
  feedId: FeedId;
  readAt: string;
}): Promise<void> {
  await db.tx(async (write) => {
    await write
      .update(calendarFeeds)
      .set({ lastReadAt: readAt })
      .where(and(eq(calendarFeeds.id, feedId), isNull(calendarFeeds.revokedAt)));
  });
}
