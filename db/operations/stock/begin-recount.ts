import { eq } from 'drizzle-orm';
import { changedTo, type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { stockCountWords as words } from '@/lib/wording/stock-acts';
import { appendLedger } from '../../ledger';
import { countOnRecord } from '../../queries/shelf/countOnRecord';
import { stockCounts } from '../../schema';
import type { CountRequest } from './close-count';

/** Another person takes over what is to be counted again, as blind as the first was. */
export async function beginStockRecount(
  request: CountRequest,
): Promise<Outcome<{ revision: number }, never>> {
  const { db, now, person, countId, baseRevision } = request;
  if (!may(person, 'countStock'))
    return refused('notPermitted', words.mayNot(person.name, 'count the shelves'));
  return db.tx(async (write) => {
    const found = await countOnRecord(write, countId);
    if (!found) return refused('notFound', words.noSuchCount);
    const { count, stage } = found;
    if (count.revision !== baseRevision) return changedTo(words.changed, count.revision);
    if (stage !== 'toRecount') return refused('frozen', words.notToRecount);
    if (count.begunBy === person.id) return refused('notPermitted', words.sameCounter(person.name));
    const revision = count.revision + 1;
    await write
      .update(stockCounts)
      .set({ recountBy: person.id, recountBegunAt: now, revision })
      .where(eq(stockCounts.id, countId));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'begin-stock-recount',
      subjectKind: 'stockCount',
      subjectId: countId,
      detail: { revision },
    });
    return { ok: true, value: { revision } };
  });
}
