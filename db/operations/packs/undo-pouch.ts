import { and, eq } from 'drizzle-orm';
import type { PackId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { checkPackReason } from '@/lib/packs/entry';
import { may } from '@/lib/people/permissions';
import { packWords as words } from '@/lib/wording/packs';
import { turnWords } from '@/lib/wording/turns';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { packs } from '../../schema';

interface UndoPouch {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  packId: PackId;
  baseRevision: number;
  reason: string;
}

/** Opens a pouch again that is in no load yet. A set's pack is opened with its set, on the bench. */
export async function undoPouch(request: UndoPouch): Promise<Outcome<{ revision: number }>> {
  const { db, now, person, packId, baseRevision } = request;
  if (!may(person, 'packSet'))
    return refused('notPermitted', words.notPermitted(person.name, 'open a pouch again'));
  const problems = checkPackReason('reason', request.reason, true, turnWords.reasonNeeded);
  return db.tx(async (write) => {
    const [pack] = await write.select().from(packs).where(eq(packs.id, packId));
    if (!pack) return refused('notFound', words.noSuchPack);
    if (pack.kind !== 'pouch') return refused('frozen', words.notAPouch(pack.number));
    if (pack.revision !== baseRevision)
      return refused('conflict', turnWords.changed(pack.number), { revision: pack.revision });
    if (pack.state === 'opened' || pack.state === 'undone')
      return refused('frozen', words.openAlready(pack.number));
    if (pack.state !== 'closed' || pack.loadId !== null)
      return refused('frozen', words.inLoadAlready(pack.number));
    if (problems.length > 0) return refusedFor(problems);
    const revision = pack.revision + 1;
    await write
      .update(packs)
      .set({ state: 'undone', revision })
      .where(and(eq(packs.id, packId), eq(packs.revision, baseRevision)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'undo-pouch',
      subjectKind: 'pack',
      subjectId: packId,
      detail: { number: pack.number, reason: request.reason.trim(), revision },
    });
    return { ok: true, value: { revision } };
  });
}
