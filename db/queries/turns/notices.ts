import { and, count, desc, eq, isNull, sql } from 'drizzle-orm';
import { type NoticeId, noticeId } from '@/lib/identity/ids';
import { NOTICE_KINDS, type NoticeContent, type NoticeKind, noticeContent } from '@/lib/turns/notice';
import { mayRead, type Reading } from '../../reader';
import { notices, noticesOff } from '../../schema';

export interface NoticeOnFile {
  id: NoticeId;
  content: NoticeContent;
  href: string | null;
  toldAt: string;
  seenAt: string | null;
}

/**
 * What a person was told, the newest first; a person reads only their own.
 *
 * @param after when and as which the last one was told that is known: those before it
 */
export async function noticesFor(
  db: Reading,
  personId: string,
  limit: number,
  after: { toldAt: string; id: string } | null = null,
): Promise<NoticeOnFile[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select()
    .from(notices)
    .where(
      and(
        eq(notices.personId, personId),
        after === null ? undefined : sql`(${notices.toldAt}, ${notices.id}) < (${after.toldAt}, ${after.id})`,
      ),
    )
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

/** Kinds of notice that a person switched off. */
export async function kindsOff(db: Reading, personId: string): Promise<NoticeKind[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ kind: noticesOff.kind })
    .from(noticesOff)
    .where(eq(noticesOff.personId, personId));
  return NOTICE_KINDS.filter((kind) => rows.some((row) => row.kind === kind));
}
