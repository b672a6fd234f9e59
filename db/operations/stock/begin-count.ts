import { and, eq, inArray } from 'drizzle-orm';
import type { NewId, PlaceId, StockCountId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import type { CountClass } from '@/lib/stock/countClass';
import { stockCountWords as words } from '@/lib/wording/stock-acts';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { readSetting } from '../../queries/settings';
import { heapsToCount } from '../../queries/shelf/dueCounts';
import { places, stock, stockCountLines, stockCounts } from '../../schema';

interface BeginStockCount {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** Made where it is begun: twice is once. */
  countId: StockCountId;
  placeId: PlaceId;
  /** What is due of a class there, or whatever lies there. */
  countClass: CountClass | 'all';
}

/** Begins a count: the heaps of a place that are due, listed without what the record says of them. */
export async function beginStockCount(request: BeginStockCount): Promise<Outcome<{ id: string }>> {
  const { db, now, newId, person, countId, placeId, countClass } = request;
  if (!may(person, 'countStock'))
    return refused('notPermitted', words.mayNot(person.name, 'count the shelves'));
  return db.tx(async (write) => {
    const [before] = await write.select().from(stockCounts).where(eq(stockCounts.id, countId));
    if (before)
      return before.begunBy === person.id && before.placeId === placeId
        ? { ok: true, value: { id: countId } }
        : refused('conflict', words.idTaken);
    const [place] = await write.select().from(places).where(eq(places.id, placeId));
    if (!place || place.withdrawnAt !== null) return refused('invalid', words.placeNeeded);
    const listed = (await heapsToCount(write, now)).filter(
      (heap) =>
        heap.placeId === placeId &&
        !heap.beingCounted &&
        (countClass === 'all' || (heap.countClass === countClass && heap.due)),
    );
    if (listed.length === 0) return refused('frozen', words.nothingToCount(place.name));
    const { tolerancePieces, tolerancePercent } = await readSetting(write, 'stock');
    await write.insert(stockCounts).values({
      id: countId,
      placeId,
      countClass,
      tolerancePieces,
      tolerancePercent,
      begunBy: person.id,
      begunAt: now,
      revision: 1,
    });
    const ids = listed.map(({ stockId }) => stockId);
    const heaps = await write
      .select()
      .from(stock)
      .where(and(inArray(stock.id, ids), eq(stock.placeId, placeId)));
    await write.insert(stockCountLines).values(
      heaps.map(({ id, itemId, form, lot, useBy, owner }) => ({
        id: newId('stockCountLine'),
        countId,
        stockId: id,
        itemId,
        form,
        lot,
        useBy,
        owner,
        added: false,
        recount: false,
      })),
    );
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'begin-stock-count',
      subjectKind: 'stockCount',
      subjectId: countId,
      detail: { placeId, countClass, heaps: ids },
    });
    return { ok: true, value: { id: countId } };
  });
}
