import { and, eq, isNull } from 'drizzle-orm';
import type { ReasonId } from '@/lib/identity/ids';
import { changedTo, type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { reasonChange } from '@/lib/reasons/reason';
import { reasonsWords as words } from '@/lib/wording/reasons';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { reasonCodes } from '../../schema';

interface ChangeReason {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  reasonId: ReasonId;
  /** As sent from outside; parsed here. */
  change: unknown;
}

/** Retires a reason, or puts it back. Nothing that was recorded with it changes: it only is no longer offered. */
export async function changeReason(request: ChangeReason): Promise<Outcome<{ revision: number }, never>> {
  const { db, now, person, reasonId } = request;
  if (!may(person, 'keepReasons')) return refused('notPermitted', words.mayNot(person.name));
  const parsed = reasonChange.safeParse(request.change);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { inUse, baseRevision } = parsed.data;
  return db.tx(async (write) => {
    const [row] = await write.select().from(reasonCodes).where(eq(reasonCodes.id, reasonId));
    if (!row) return refused('notFound', words.noSuch);
    if (row.revision !== baseRevision) return changedTo(words.changed(row.words), row.revision);
    if ((row.retiredAt === null) === inUse) return refused('frozen', words.sameStanding(row.words, inUse));
    const [alike] = await write
      .select({ id: reasonCodes.id })
      .from(reasonCodes)
      .where(
        and(eq(reasonCodes.kind, row.kind), eq(reasonCodes.words, row.words), isNull(reasonCodes.retiredAt)),
      );
    if (inUse && alike)
      return refusedFor([{ path: ['inUse'], code: 'words-taken', message: words.wordsTaken(row.words) }]);
    const revision = row.revision + 1;
    await write
      .update(reasonCodes)
      .set({ retiredAt: inUse ? null : now, revision })
      .where(and(eq(reasonCodes.id, reasonId), eq(reasonCodes.revision, baseRevision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'change-reason',
      subjectKind: 'reason',
      subjectId: reasonId,
      detail: { kind: row.kind, code: row.code, words: row.words, inUse },
    });
    return { ok: true, value: { revision } };
  });
}
