import { and, count, eq, isNull } from 'drizzle-orm';
import { hashCode } from '@/db/secrets';
import { newFeed } from '@/lib/calendar/feed';
import { type FeedId, feedId, type NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { calendarWords as words } from '@/lib/wording/calendar';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { calendarFeeds, theatres } from '../../schema';

interface MakeFeed {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  newToken: () => string;
  person: Person;
  /** As sent from outside; parsed here. */
  feed: unknown;
}

const MOST_AT_ONCE = 10;

/**
 * Makes a calendar address. Its secret is answered once, to its owner, and kept nowhere: what is stored is its hash, and the
 * ledger has neither.
 */
export async function makeFeed(request: MakeFeed): Promise<Outcome<{ id: FeedId; token: string }, never>> {
  const { db, now, newId, newToken, person } = request;
  if (!may(person, 'keepFeeds')) return refused('notPermitted', words.mayNot(person.name));
  const parsed = newFeed.safeParse(request.feed);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { kind, theatreId, name } = parsed.data;
  const problems: Problem[] = textProblems(name, ['name']);
  if (kind === 'loans' && theatreId !== null)
    problems.push({ path: ['theatreId'], code: 'of-all', message: words.loansOfAll });
  return db.tx(async (write) => {
    const [theatre] =
      theatreId === null ? [] : await write.select().from(theatres).where(eq(theatres.id, theatreId));
    if (theatreId !== null && !theatre)
      problems.push({ path: ['theatreId'], code: 'theatre-unknown', message: words.noSuchTheatre });
    if (problems.length > 0) return refusedFor(problems);
    const [open] = await write
      .select({ n: count() })
      .from(calendarFeeds)
      .where(and(eq(calendarFeeds.personId, person.id), isNull(calendarFeeds.revokedAt)));
    if ((open?.n ?? 0) >= MOST_AT_ONCE) return refused('frozen', words.tooMany(MOST_AT_ONCE));
    const id = feedId.parse(newId('feed'));
    const token = newToken();
    await write
      .insert(calendarFeeds)
      .values({ id, personId: person.id, kind, theatreId, name, tokenHash: hashCode(token), madeAt: now });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'make-feed',
      subjectKind: 'feed',
      subjectId: id,
      detail: { kind, theatreId },
    });
    return { ok: true, value: { id, token } };
  });
}
