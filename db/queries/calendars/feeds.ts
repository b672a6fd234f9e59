import { and, asc, desc, eq, isNull } from 'drizzle-orm';
import { hashCode } from '@/db/secrets';
import { type FeedKind, feedKind } from '@/lib/calendar/feed';
import { type FeedId, feedId, type PersonId, personId } from '@/lib/identity/ids';
import { mayRead, type Reading } from '../../reader';
import { calendarFeeds, people, theatres } from '../../schema';

/** A calendar address as it is listed: what it is of and when it was last read, never its secret. */
export interface FeedOnFile {
  id: FeedId;
  owner: { id: PersonId; name: string };
  kind: FeedKind;
  theatre: string | null;
  name: string;
  madeAt: string;
  lastReadAt: string | null;
}

/** One's own addresses that are open, the newest first. */
export async function ownFeeds(db: Reading, id: PersonId): Promise<FeedOnFile[]> {
  mayRead(db, 'keepFeeds');
  return openFeeds(db, id);
}

/** Everybody's open addresses, for who may revoke them. */
export async function allFeeds(db: Reading): Promise<FeedOnFile[]> {
  mayRead(db, 'managePeople');
  return openFeeds(db, null);
}

async function openFeeds({ read }: Reading, id: PersonId | null): Promise<FeedOnFile[]> {
  const open = isNull(calendarFeeds.revokedAt);
  const rows = await read
    .select({ feed: calendarFeeds, owner: people.name, theatre: theatres.name })
    .from(calendarFeeds)
    .innerJoin(people, eq(people.id, calendarFeeds.personId))
    .leftJoin(theatres, eq(theatres.id, calendarFeeds.theatreId))
    .where(id === null ? open : and(open, eq(calendarFeeds.personId, id)))
    .orderBy(asc(people.name), desc(calendarFeeds.madeAt), asc(calendarFeeds.id));
  return rows.map(({ feed, owner, theatre }) => ({
    id: feedId.parse(feed.id),
    owner: { id: personId.parse(feed.personId), name: owner },
    kind: feedKind.parse(feed.kind),
    theatre,
    name: feed.name,
    madeAt: feed.madeAt,
    lastReadAt: feed.lastReadAt,
  }));
}

/** The feed that a secret leads to. */
export interface FoundFeed {
  id: FeedId;
  kind: FeedKind;
  theatreId: string | null;
  theatre: string | null;
  lastReadAt: string | null;
  /** It was revoked, or its owner works here no longer. */
  over: boolean;
}

/** Whose door a secret opens; `null` for one that never opened any. Found by its hash alone. */
export async function feedOfToken(db: Pick<Reading, 'read'>, token: string): Promise<FoundFeed | null> {
  const [row] = await db.read
    .select({ feed: calendarFeeds, leftAt: people.leftAt, theatre: theatres.name })
    .from(calendarFeeds)
    .innerJoin(people, eq(people.id, calendarFeeds.personId))
    .leftJoin(theatres, eq(theatres.id, calendarFeeds.theatreId))
    .where(eq(calendarFeeds.tokenHash, hashCode(token)));
  if (!row) return null;
  const { feed, leftAt, theatre } = row;
  return {
    id: feedId.parse(feed.id),
    kind: feedKind.parse(feed.kind),
    theatreId: feed.theatreId,
    theatre,
    lastReadAt: feed.lastReadAt,
    over: feed.revokedAt !== null || leftAt !== null,
  };
}
