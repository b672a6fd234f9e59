import { and, eq } from 'drizzle-orm';
import { draftFromItem } from '@/lib/catalogue/form/draft';
import { type ItemOutcome, itemRefused } from '@/lib/catalogue/refusal';
import type { ItemId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import { itemFromRow } from '../mappers/item';
import type { Person } from '../queries/people';
import { items } from '../schema';
import { findRow } from './item-clashes';

interface WithdrawItem {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  id: ItemId;
  revision: number;
  /** Why, in words: kept in the ledger. */
  reason: string;
}

const LONGEST_REASON = 300;

/**
 * Withdraws an item: it stays in the catalogue, marked, and plans that name it say so. What holds it keeps it until
 * somebody takes it out. Withdrawing what is withdrawn changes nothing.
 */
export async function withdrawItem(
  request: WithdrawItem,
): Promise<ItemOutcome<{ id: ItemId; revision: number }>> {
  const { db, now, person, id, revision } = request;
  if (!may(person, 'editCatalogue')) {
    return itemRefused(
      'notPermitted',
      `${person.name} can’t change the catalogue: a theatre manager, a stock keeper or an administrator can.`,
    );
  }
  const reason = request.reason.trim();
  if (reason === '' || reason.length > LONGEST_REASON) {
    const message =
      reason === '' ? 'Say why it is withdrawn.' : `Say why in at most ${LONGEST_REASON} characters.`;
    return itemRefused('invalid', [{ path: ['reason'], code: 'reason-length', message }]);
  }
  return db.tx(async (write) => {
    const row = await findRow(write, id);
    if (!row) return itemRefused('notFound', 'There is no such item.');
    if (row.status === 'withdrawn') return { ok: true, value: { id, revision: row.revision } };
    if (row.status === 'recalled') {
      return itemRefused('invalid', 'A recalled item stays marked as recalled: it is out of use already.');
    }
    if (row.revision !== revision) {
      return itemRefused(
        'conflict',
        'Somebody changed this item after you opened it: look at it again first.',
        {
          draft: draftFromItem(itemFromRow(row)),
          revision: row.revision,
        },
      );
    }
    const [saved] = await write
      .update(items)
      .set({ status: 'withdrawn', revision: revision + 1 })
      .where(and(eq(items.id, id), eq(items.revision, revision)))
      .returning({ revision: items.revision });
    if (!saved) throw new Error('the item changed inside its own transaction');
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'withdraw-item',
      subjectKind: 'item',
      subjectId: id,
      detail: { code: row.code, reason },
    });
    return { ok: true, value: { id, revision: saved.revision } };
  });
}
