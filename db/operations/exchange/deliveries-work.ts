import { inArray } from 'drizzle-orm';
import { type DeliveryWork, planDeliveries } from '@/lib/exchange/plans/deliveries';
import { itemFinder } from '@/lib/exchange/plans/itemOf';
import { stockId } from '@/lib/identity/ids';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { exchangeWords as words } from '@/lib/wording/exchange';
import { receivedDeliveries } from '../../queries/exchange/received-deliveries';
import { knownOnShelves, namedItems, namedPlaces } from '../../queries/exchange/shelf-facts';
import { datesOfLots, heapAt, lotKey, lotsUnderRecall } from '../../queries/shelf/heapAt';
import { deliveryLines } from '../../schema';
import { adjustStock } from '../stock/adjust-stock';
import { receiveDelivery } from '../stock/receive-delivery';
import { type Effect, inside, type ListWork, sentenceOf } from './work';

export const deliveriesWork: ListWork<DeliveryWork> = {
  known: knownOnShelves,
  async plan(read, rows, { now }) {
    const items = await namedItems(read);
    const find = itemFinder(items);
    const named = [...new Set(rows.flatMap((row) => find(row).item?.id ?? []))];
    const references = new Set(rows.map(({ cells }) => (cells.reference ?? '').trim().toLowerCase()));
    const [places, received, lotUnderRecall, dates] = await Promise.all([
      namedPlaces(read),
      receivedDeliveries(read, references),
      lotsUnderRecall(read, named),
      datesOfLots(read, named),
    ]);
    const useBysOfLot = (itemId: string, lot: string | null): readonly (PlainDate | null)[] =>
      lot === null ? [] : (dates.get(lotKey(itemId, lot)) ?? []);
    return planDeliveries(rows, {
      items,
      places,
      received,
      lotUnderRecall,
      useBysOfLot,
      today: wallClock(now).date,
    });
  },
  async apply(write, outcome, { now, newId, person }) {
    const { lines, ...head } = outcome.work;
    const sent = {
      ...head,
      id: newId('delivery'),
      lines: lines.map((line) => ({
        ...line,
        id: newId('deliveryLine'),
        useByReadAgain: false,
        scanId: null,
      })),
    };
    const done = await receiveDelivery({ db: inside(write), now, newId, person, delivery: sent });
    if (!done.ok) return done;
    const rows = await write
      .select()
      .from(deliveryLines)
      .where(
        inArray(
          deliveryLines.id,
          sent.lines.map(({ id }) => id),
        ),
      )
      .orderBy(deliveryLines.lineNo);
    const effects = rows.map(
      (row): Effect => ({
        did: 'added',
        subjectKind: 'stock',
        subjectId: row.stockId,
        name: `${head.reference} of ${head.supplier}, line ${row.lineNo}`,
        revision: null,
        before: { pieces: row.count * row.piecesEach },
      }),
    );
    return { ok: true, value: effects };
  },
  async takeBack(write, effect, { now, newId, person, because }) {
    const { pieces } = effect.before as { pieces: number };
    const id = stockId.parse(effect.subjectId);
    const heap = await heapAt(write, id, now);
    if (!heap) return words.changedSince;
    const request = { db: inside(write), now, newId, person, stockId: id, baseRevision: heap.row.revision };
    const done = await adjustStock({ ...request, reason: 'enteredTooMany', pieces, note: because });
    return done.ok ? null : sentenceOf(done.refusal);
  },
};
