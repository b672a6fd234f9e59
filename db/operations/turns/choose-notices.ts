import { and, eq } from 'drizzle-orm';
import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import { MAY_BE_OFF, type NoticeKind } from '@/lib/turns/notice';
import { NOTICE_KIND_WORDS, noticeWords } from '@/lib/wording/notices';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { noticesOff } from '../../schema';

interface ChooseNotices {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  /** Every kind that is not wanted; the others are told. */
  off: readonly NoticeKind[];
}

/**
 * Which kinds of notice a person does not want from now on. What a case may rest on is refused, and then nothing is changed.
 * The ledger has it, for one day it may be asked why somebody was not told.
 */
export async function chooseNotices(request: ChooseNotices): Promise<Outcome<{ off: NoticeKind[] }, never>> {
  const { db, now, person } = request;
  const off = [...new Set(request.off)].sort();
  const never = off.filter((kind) => !MAY_BE_OFF[kind]);
  if (never.length > 0)
    return refusedFor(
      never.map((kind) => ({
        path: ['off'],
        code: 'never-off',
        message: noticeWords.neverOff(NOTICE_KIND_WORDS[kind]),
      })),
    );
  return db.tx(async (write) => {
    const rows = await write
      .select({ kind: noticesOff.kind })
      .from(noticesOff)
      .where(eq(noticesOff.personId, person.id));
    const before = rows.map(({ kind }) => kind).sort();
    if (before.join() === off.join()) return { ok: true, value: { off } };
    for (const kind of before)
      if (!off.some((one) => one === kind))
        await write
          .delete(noticesOff)
          .where(and(eq(noticesOff.personId, person.id), eq(noticesOff.kind, kind)));
    for (const kind of off)
      if (!before.includes(kind))
        await write.insert(noticesOff).values({ personId: person.id, kind, since: now });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'choose-notices',
      subjectKind: 'person',
      subjectId: person.id,
      detail: { off },
    });
    return { ok: true, value: { off } };
  });
}
