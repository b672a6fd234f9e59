import { and, eq, isNull } from 'drizzle-orm';
import type { FeedId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { calendarWords as words } from '@/lib/wording/calendar';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { calendarFeeds } from '../../schema';

interface RevokeFeed {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  feedId: FeedId;
}

/**
 * Revokes a calendar address for good: one's own, or as an administrator anybody's. Somebody else's is answered as if it
 * were none. Revoked twice, it is revoked once.
 */
export async function revokeFeed({ db, now, person, feedId }: RevokeFeed): Promise<Outcome<null, never>> {
  if (!may(person, 'keepFeeds')) return refused('notPermitted', words.mayNot(person.name));
  return db.tx(async (write) => {
    const [feed] = await write.select().from(calendarFeeds).where(eq(calendarFeeds.id, feedId));
    if (!feed || (feed.personId !== person.id && !may(person, 'managePeople')))
      return refused('notFound', words.noSuchFeed);
    if (feed.revokedAt !== null) return { ok: true, value: null };
    await write
      .update(calendarFeeds)
      .set({ revokedAt: now, revokedBy: person.id })
      .where(and(eq(calendarFeeds.id, feedId), isNull(calendarFeeds.revokedAt)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'revoke-feed',
      subjectKind: 'feed',
      subjectId: feedId,
      detail: { kind: feed.kind, of: feed.personId },
    });
    return { ok: true, value: null };
  });
}
