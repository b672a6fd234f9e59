import type { NewId } from '@/lib/identity/ids';
import { type NoticeContent, noticeContent } from '@/lib/turns/notice';
import type { Queries } from '../../client';
import { notices } from '../../schema';

type TellPerson = NoticeContent & {
  personId: string;
  /** The screen that shows what it is about. */
  href: string | null;
  now: string;
  newId: NewId;
};

/** Leaves a notice for a person, inside the caller's transaction: what happened and its being told stand or fall together. */
export async function tellPerson(
  write: Queries,
  { personId, href, now, newId, ...content }: TellPerson,
): Promise<void> {
  const { kind, detail } = noticeContent.parse(content);
  await write
    .insert(notices)
    .values({ id: newId('notice'), personId, kind, detail, href, toldAt: now, seenAt: null });
}
