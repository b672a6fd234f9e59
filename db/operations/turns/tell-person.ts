import { and, eq } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import { MAY_BE_OFF, type NoticeContent, type NoticeKind, noticeContent } from '@/lib/turns/notice';
import type { Queries } from '../../client';
import { notices, noticesOff } from '../../schema';

type TellPerson = NoticeContent & {
  personId: string;
  /** The screen that shows what it is about. */
  href: string | null;
  now: string;
  newId: NewId;
};

/**
 * Leaves a notice for a person, inside the caller's transaction: what happened and its being told stand or fall together.
 * Nothing is left of a kind that may be switched off and that this person did.
 */
export async function tellPerson(
  write: Queries,
  { personId, href, now, newId, ...content }: TellPerson,
): Promise<void> {
  const { kind, detail } = noticeContent.parse(content);
  if (MAY_BE_OFF[kind] && (await isOff(write, personId, kind))) return;
  await write
    .insert(notices)
    .values({ id: newId('notice'), personId, kind, detail, href, toldAt: now, seenAt: null });
}

async function isOff(write: Queries, personId: string, kind: NoticeKind): Promise<boolean> {
  const [off] = await write
    .select({ kind: noticesOff.kind })
    .from(noticesOff)
    .where(and(eq(noticesOff.personId, personId), eq(noticesOff.kind, kind)));
  return off !== undefined;
}
