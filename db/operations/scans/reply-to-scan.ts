import { eq } from 'drizzle-orm';
import { z } from 'zod';
import { type ScanId, scanId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { scanWords as words } from '@/lib/wording/scans';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { scanReplies, scans } from '../../schema';

export const scanReply = z.strictObject({ reply: z.enum(['another', 'same']) });

interface ReplyToScan {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  /** As sent from outside. */
  scan: string;
  reply: unknown;
}

export interface Replied {
  id: ScanId;
  reply: 'another' | 'same';
}

/** Keeps what a person said when asked whether a scan was another piece or the same again. Said twice, it is kept once. */
export async function replyToScan(request: ReplyToScan): Promise<Outcome<Replied>> {
  const { db, now, person } = request;
  if (!may(person, 'recordScan')) return refused('notPermitted', words.notThisSession);
  const id = scanId.safeParse(request.scan);
  if (!id.success) return refused('notFound', words.noSuchScan);
  const parsed = scanReply.safeParse(request.reply);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { reply } = parsed.data;
  return db.tx(async (write) => {
    const [scan] = await write.select({ verdict: scans.verdict }).from(scans).where(eq(scans.id, id.data));
    if (!scan) return refused('notFound', words.noSuchScan);
    if (scan.verdict !== 'ask') return refused('frozen', words.notAsked);
    const [before] = await write.select().from(scanReplies).where(eq(scanReplies.scanId, id.data));
    if (before && before.reply !== reply) return refused('conflict', words.answered);
    if (!before) {
      await write.insert(scanReplies).values({ scanId: id.data, reply, personId: person.id, repliedAt: now });
      await appendLedger(write, {
        doneAt: now,
        enteredAt: now,
        personId: person.id,
        action: 'reply-to-scan',
        subjectKind: 'scan',
        subjectId: id.data,
        detail: { reply },
      });
    }
    return { ok: true, value: { id: id.data, reply } };
  });
}
