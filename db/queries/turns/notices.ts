import { and, count, desc, eq, isNull } from 'drizzle-orm';
import { type NoticeId, noticeId } from '@/lib/identity/ids';
import { type NoticeContent, noticeContent } from '@/lib/turns/notice';
import { mayRead, type Reading } from '../../reader';
import { notices } from '../../schema';

export interface NoticeOnFile {
  id: NoticeId;
  content: NoticeContent;
  href: string | null;
  toldAt: string;
  seenAt: string | null;
}

/** What a person was told, the newest first; a person reads only their own. */
export async function noticesFor(db: Reading, personId: string, limit: number): Promise<NoticeOnFile[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select()
    .from(notices)
    .where(eq(notices.personId, personId))
    .orderBy(desc(notices.toldAt), desc(notices.id))
    .limit(limit);
  return rows.map(({ id, kind, detail, href, toldAt, seenAt }) => ({
    id: noticeId.parse(id),
    content: noticeContent.parse({ kind, detail }),
    href,
    toldAt,
    seenAt,
  }));
}

export async function unseenNotices(db: Reading, personId: string): Promise<number> {
  mayRead(db, 'readHospital');
  const [row] = await db.read
    .select({ n: count() })
    .from(notices)
    .where(and(eq(notices.personId, personId), isNull(notices.seenAt)));
  return row?.n ?? 0;
}
