import { desc, eq } from 'drizzle-orm';
import { type PackId, type PrintId, printId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { checkPackReason } from '@/lib/packs/entry';
import { may } from '@/lib/people/permissions';
import { packWords as words } from '@/lib/wording/packs';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { labelPrints, packs } from '../../schema';

interface PrintLabel {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  packId: PackId;
  /** Made where it is asked for, so that one reprint sent twice is one copy. */
  id: PrintId;
  /** Why another label is needed. */
  because: string;
}

/**
 * Prints the label of a pack again: a new copy with its number on it. The one before is refused at a scan from then on,
 * so that there is one good label to a pack.
 */
export async function printLabel(request: PrintLabel): Promise<Outcome<{ id: PrintId; copy: number }>> {
  const { db, now, person, packId, id } = request;
  if (!may(person, 'printLabel'))
    return refused('notPermitted', words.notPermitted(person.name, 'print labels'));
  const because = request.because.trim();
  return db.tx(async (write) => {
    const [pack] = await write.select().from(packs).where(eq(packs.id, packId));
    if (!pack) return refused('notFound', words.noSuchPack);
    const [known] = await write.select().from(labelPrints).where(eq(labelPrints.id, id));
    if (known?.packId === packId)
      return { ok: true, value: { id: printId.parse(known.id), copy: known.copy } };
    if (pack.state === 'opened' || pack.state === 'undone')
      return refused('frozen', words.openAlready(pack.number));
    const [last] = await write
      .select({ copy: labelPrints.copy })
      .from(labelPrints)
      .where(eq(labelPrints.packId, packId))
      .orderBy(desc(labelPrints.copy))
      .limit(1);
    const copy = (last?.copy ?? 0) + 1;
    // a pack from before labels were counted gets its first one without a word
    const problems = checkPackReason('because', because, copy > 1, words.reprintReason);
    if (problems.length > 0) return refusedFor(problems);
    await write.insert(labelPrints).values({
      id,
      packId,
      copy,
      because: because === '' ? null : because,
      printedBy: person.id,
      printedAt: now,
    });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'print-label',
      subjectKind: 'pack',
      subjectId: packId,
      detail: { printId: id, number: pack.number, copy, because: because === '' ? null : because },
    });
    return { ok: true, value: { id, copy } };
  });
}
