import { eq, sql } from 'drizzle-orm';
import { reconciliationEntry } from '@/lib/consignment/entries';
import { readOwnersList } from '@/lib/consignment/ownersList';
import { reconcileLots } from '@/lib/consignment/reconcile';
import type { NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { wallClock } from '@/lib/theatre/localTime';
import { reconciliationWords as words } from '@/lib/wording/reconciliation';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { lotsToReconcile } from '../../queries/consignment/lotsToReconcile';
import type { Person } from '../../queries/people';
import { items, lenders, reconciliationLines, reconciliations } from '../../schema';

interface EnterReconciliation {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** As sent from outside; parsed here. */
  entry: unknown;
}

const ROWS_AT_A_TIME = 400;

/**
 * Takes an owner's list, or a count, whole or not at all, and keeps it beside our record of this moment. Entered with an id of
 * its own, twice is once. It changes nothing on any shelf.
 */
export async function enterReconciliation(
  request: EnterReconciliation,
): Promise<Outcome<{ id: string; number: string }, never>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'reconcileConsignment')) return refused('notPermitted', words.mayNot(person.name));
  const parsed = reconciliationEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { id, lenderId, how, listedOn, text } = parsed.data;
  return db.tx(async (write) => {
    const [before] = await write.select().from(reconciliations).where(eq(reconciliations.id, id));
    if (before)
      return before.enteredBy === person.id && before.lenderId === lenderId
        ? { ok: true, value: { id, number: before.number } }
        : refused('conflict', words.idTaken);
    const [lender] = await write.select().from(lenders).where(eq(lenders.id, lenderId));
    if (!lender) return refused('notFound', words.noSuchOwner);
    if (listedOn > wallClock(now).date)
      return refusedFor([{ path: ['listedOn'], code: 'in-the-future', message: words.inTheFuture }]);
    const known = await write
      .select({ id: items.id, code: items.code, gtin: items.gtin, name: items.name })
      .from(items);
    const listed = readOwnersList(text, known);
    if (!listed.ok)
      return refusedFor(listed.problems.map((one) => ({ ...one, path: ['text', ...one.path] })));
    const lots = reconcileLots(lotsToReconcile(write, lenderId, { listed: listed.value, listedOn }), how);
    const [last] = await write
      .select({ number: sql<number | null>`max(CAST(substr(${reconciliations.number}, 4) AS INTEGER))` })
      .from(reconciliations);
    const number = `RL-${String((last?.number ?? 0) + 1).padStart(4, '0')}`;
    await write.insert(reconciliations).values({
      ...{ id, number, lenderId, how, listedOn },
      enteredBy: person.id,
      enteredAt: now,
      revision: 1,
    });
    const rows = lots.map((lot) => ({ ...lot, id: newId('reconciliationLine'), reconciliationId: id }));
    for (let at = 0; at < rows.length; at += ROWS_AT_A_TIME)
      await write.insert(reconciliationLines).values(rows.slice(at, at + ROWS_AT_A_TIME));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'enter-reconciliation',
      subjectKind: 'reconciliation',
      subjectId: id,
      detail: {
        ...{ number, lenderId, how, listedOn },
        listed: listed.value.length,
        unexplained: lots.filter(({ unexplained }) => unexplained !== 0).length,
      },
    });
    return { ok: true, value: { id, number } };
  });
}
