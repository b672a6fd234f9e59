import { eq } from 'drizzle-orm';
import { changedTo, type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { stockCountWords as words } from '@/lib/wording/stock-acts';
import { appendLedger } from '../../ledger';
import { countOnRecord } from '../../queries/shelf/countOnRecord';
import { stockCounts } from '../../schema';
import type { CountRequest } from './close-count';

/** Gives up a count that is not closed: by whoever counts, or by somebody who decides about differences. Nothing comes of it. */
export async function abandonStockCount(
  request: CountRequest,
): Promise<Outcome<{ revision: number }, never>> {
  const { db, now, person, countId, baseRevision } = request;
  return db.tx(async (write) => {
    const found = await countOnRecord(write, countId);
    if (!found) return refused('notFound', words.noSuchCount);
    const { count, stage } = found;
    if (count.begunBy !== person.id && !may(person, 'decideStockCount'))
      return refused('notPermitted', words.notYours('Somebody else'));
    if (count.revision !== baseRevision) return changedTo(words.changed, count.revision);
    if (stage !== 'counting') return refused('frozen', words.notOpen);
    const revision = count.revision + 1;
    await write
      .update(stockCounts)
      .set({ abandonedBy: person.id, abandonedAt: now, revision })
      .where(eq(stockCounts.id, countId));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'abandon-stock-count',
      subjectKind: 'stockCount',
      subjectId: countId,
      detail: { revision },
    });
    return { ok: true, value: { revision } };
  });
}
