import { inArray } from 'drizzle-orm';
import { type DeliveriesFacts, type DeliveryWork, planDeliveries } from '@/lib/exchange/plans/deliveries';
import { itemFinder } from '@/lib/exchange/plans/itemOf';
import { stockId } from '@/lib/identity/ids';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { stockHold } from '@/lib/stock/hold';
import { stockOwner } from '@/lib/stock/stock';
import { wallClock } from '@/lib/theatre/localTime';
import { exchangeWords as words } from '@/lib/wording/exchange';
import type { Queries } from '../../client';
import { datesOfLots, heapAt, lotKey, lotsUnderRecall } from '../../queries/shelf/heapAt';
import { deliveries, deliveryLines } from '../../schema';
import { adjustStock } from '../stock/adjust-stock';
import { receiveDelivery } from '../stock/receive-delivery';
import { knownOnShelves, namedItems, namedPlaces } from './shelf-facts';
import { type Effect, inside, type ListWork, sentenceOf } from './work';

type Received = DeliveriesFacts['received'][number];

/** Deliveries as they were received, the oldest first; `references`: only those with one of these numbers. */
export async function receivedDeliveries(
  read: Queries,
  references: ReadonlySet<string> | null,
): Promise<Received[]> {
  const rows = await read.select().from(deliveries).orderBy(deliveries.receivedAt, deliveries.id);
  const asked = rows.filter(({ reference }) => references?.has(reference.trim().toLowerCase()) ?? true);
  const ids = new Set(asked.map(({ id }) => id));
  const lines = await read
    .select()
    .from(deliveryLines)
    .orderBy(deliveryLines.deliveryId, deliveryLines.lineNo);
  const byDelivery = new Map<string, Received['lines'][number][]>();
  for (const line of lines) {
    if (!ids.has(line.deliveryId)) continue;
    const own = byDelivery.get(line.deliveryId) ?? [];
    own.push({
      itemId: line.itemId as Received['lines'][number]['itemId'],
      form: line.form === 'unsterile' ? 'unsterile' : 'sterilePacked',
      lot: line.lot,
      useBy: line.useBy === null ? null : plainDate.parse(line.useBy),
      count: line.count,
      unit: line.piecesEach === 1 ? 'pieces' : 'packs',
      placeId: line.placeId as Received['lines'][number]['placeId'],
      owner: stockOwner.parse(line.owner),
      held: line.heldBecause === null ? null : stockHold.parse(line.heldBecause),
    });
    byDelivery.set(line.deliveryId, own);
  }
  return asked.map(({ id, supplier, reference, arrivedOn }) => ({
    id,
    supplier,
    reference,
    arrivedOn,
    lines: byDelivery.get(id) ?? [],
  }));
}

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
