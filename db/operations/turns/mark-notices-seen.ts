import { and, eq, inArray, isNull } from 'drizzle-orm';
import type { NoticeId } from '@/lib/identity/ids';
import type { Database } from '../../client';
import type { Person } from '../../queries/people';
import { notices } from '../../schema';

interface MarkNoticesSeen {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  noticeIds: readonly NoticeId[];
}

/** A person's own notices as seen; another's are left alone. A mark for reading, so the ledger does not speak of it. */
export async function markNoticesSeen({ db, now, person, noticeIds }: MarkNoticesSeen): Promise<number> {
  if (noticeIds.length === 0) return 0;
  return db.tx(async (write) => {
    const seen = await write
      .update(notices)
      .set({ seenAt: now })
      .where(
        and(inArray(notices.id, [...noticeIds]), eq(notices.personId, person.id), isNull(notices.seenAt)),
      )
      .returning({ id: notices.id });
    return seen.length;
  });
}
