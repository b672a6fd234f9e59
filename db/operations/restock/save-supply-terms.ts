import { eq } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { termsEntry } from '@/lib/restock/entries';
import { restockActWords as words } from '@/lib/wording/restock-acts';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { items, makers, supplyTermsRows } from '../../schema';

interface SaveSupplyTerms {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/** States the terms of a maker or an item, whole; what is left empty falls back. Keeps what they were in the ledger. */
export async function saveSupplyTerms(
  request: SaveSupplyTerms,
): Promise<Outcome<{ revision: number }, { revision: number }>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'keepSupplyTerms')) return refused('notPermitted', words.mayNotKeepTerms(person.name));
  const parsed = termsEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { of, baseRevision, terms } = parsed.data;
  return db.tx(async (write) => {
    const ofMaker = of.kind === 'maker';
    const [named] = ofMaker
      ? await write.select({ name: makers.name }).from(makers).where(eq(makers.id, of.id))
      : await write.select({ name: items.name }).from(items).where(eq(items.id, of.id));
    if (!named) return refused('notFound', ofMaker ? words.noSuchMaker : words.noSuchItem);
    const key = ofMaker ? supplyTermsRows.makerId : supplyTermsRows.itemId;
    const [before] = await write.select().from(supplyTermsRows).where(eq(key, of.id));
    const revision = before?.revision ?? 0;
    if (revision !== baseRevision) return refused('conflict', words.changed(named.name), { revision });
    const next = { ...terms, changedBy: person.id, changedAt: now, revision: revision + 1 };
    if (before) await write.update(supplyTermsRows).set(next).where(eq(supplyTermsRows.id, before.id));
    else
      await write.insert(supplyTermsRows).values({
        ...next,
        id: newId('terms'),
        makerId: ofMaker ? of.id : null,
        itemId: ofMaker ? null : of.id,
      });
    const { leadDays, leadSdDays, reviewDays, servicePercent, shelfLifeDays, consigned } = before ?? {};
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'save-supply-terms',
      subjectKind: of.kind,
      subjectId: of.id,
      detail: {
        before: before
          ? { leadDays, leadSdDays, reviewDays, servicePercent, shelfLifeDays, consigned }
          : null,
        after: terms,
      },
    });
    return { ok: true, value: { revision: revision + 1 } };
  });
}
