import { eq } from 'drizzle-orm';
import type { NewId, PackId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { packPouchEntry } from '@/lib/packs/entry';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { packWords as words } from '@/lib/wording/packs';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { itemFromRow } from '../../mappers/item';
import type { Person } from '../../queries/people';
import { items, labelPrints, packs } from '../../schema';
import { nextPackNumber } from './next-number';

interface PackPouch {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** As sent from outside; parsed here against `packPouchEntry`. */
  entry: unknown;
  /** That the packer said "I packed it". */
  attestation: Attestation;
}

/**
 * Closes one item in a pouch by itself, with its first label. Single-use pieces that came sterile from their maker are
 * never packed here: once open they do not go back. It becomes stock when its load is accepted, not by this.
 */
export async function packPouch(request: PackPouch): Promise<Outcome<{ id: PackId; number: string }>> {
  const { db, now, newId, person, attestation } = request;
  if (!may(person, 'packSet'))
    return refused('notPermitted', words.notPermitted(person.name, 'pack pouches'));
  const parsed = packPouchEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { id, itemId, lot } = parsed.data;
  return db.tx(async (write) => {
    const [row] = await write.select().from(items).where(eq(items.id, itemId));
    if (!row) return refused('notFound', words.noSuchItem);
    const [known] = await write.select().from(packs).where(eq(packs.id, id));
    if (known)
      return known.itemId === itemId && known.packedBy === person.id
        ? { ok: true, value: { id, number: known.number } }
        : refused('conflict', words.openAlready(known.number));
    const item = itemFromRow(row);
    const problems: Problem[] = [
      ...(item.status === 'current'
        ? []
        : [{ path: ['itemId'], code: 'not-current', message: words.notCurrent(item.name, item.status) }]),
      ...(item.use === 'singleUse' && item.suppliedSterile === true
        ? [{ path: ['itemId'], code: 'single-use', message: words.singleUse(item.name) }]
        : []),
      ...textProblems(lot ?? '', ['lot']),
      ...(attests(attestation, person.id, 'iPacked', now)
        ? []
        : [{ path: ['proof'], code: 'not-proven', message: words.notProven }]),
    ];
    if (problems.length > 0) return refusedFor(problems);
    const number = await nextPackNumber(write);
    await write.insert(packs).values({
      id,
      number,
      kind: 'pouch',
      itemId,
      lot,
      barrier: 'pouch',
      packedBy: person.id,
      packedAt: now,
      workedGrams: item.massGrams,
      contents: [],
      state: 'closed',
      revision: 1,
    });
    await write.insert(labelPrints).values({
      id: newId('print'),
      packId: id,
      copy: 1,
      because: null,
      printedBy: person.id,
      printedAt: now,
    });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'pack-pouch',
      subjectKind: 'pack',
      subjectId: id,
      detail: {
        number,
        itemId,
        lot,
        label: { copy: 1 },
        attested: { meaning: attestation.meaning, method: attestation.method, at: attestation.at },
      },
    });
    return { ok: true, value: { id, number } };
  });
}
