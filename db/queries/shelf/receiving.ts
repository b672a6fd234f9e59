import { and, asc, desc, eq, type SQL, sql } from 'drizzle-orm';
import type { Item } from '@/lib/catalogue/item';
import { groupBy } from '@/lib/lists/groupBy';
import { type StockForm, stockForm } from '@/lib/stock/stock';
import { mayRead, type Reading } from '../../reader';
import { deliveries, deliveryLines, items, people, places, stock } from '../../schema';
import { linesOnOrder } from '../restock/coming';
import { type LookAlikeOnShelf, lookAlikesOnShelf } from './lookAlikesOnShelf';
import { onShelf } from './onShelf';

/** What is asked of an item as it is received. */
export interface ReceivedItem {
  itemId: string;
  code: string;
  name: string;
  status: 'current' | 'withdrawn' | 'recalled';
  packMultiple: number;
  suppliedSterile: boolean | null;
  /** Where it lies now and in which form, the place with most pieces first. */
  places: { id: string; name: string; form: StockForm }[];
  alike: LookAlikeOnShelf[];
  /** Lines of open orders of which some is still to come, the oldest order first. */
  onOrder: { orderLineId: string; number: string; toCome: number; expectedOn: string | null }[];
}

export async function receivedItem(db: Reading, item: Item): Promise<ReceivedItem> {
  mayRead(db, 'readHospital');
  const [lying, alike, onOrder] = await Promise.all([
    db.read
      .select({ id: places.id, name: places.name, form: stock.form, quantity: stock.quantity })
      .from(stock)
      .innerJoin(places, eq(places.id, stock.placeId))
      .where(and(eq(stock.itemId, item.id), onShelf)),
    lookAlikesOnShelf(db, item),
    linesOnOrder(db.read, item.id),
  ]);
  const byPlace = [...groupBy(lying, ({ id, form }) => `${id} ${form}`).values()].map((own) => ({
    place: own[0],
    pieces: own.reduce((sum, { quantity }) => sum + quantity, 0),
  }));
  const { code, name, status, packMultiple, suppliedSterile } = item;
  return {
    ...{ itemId: item.id, code, name, status, packMultiple, suppliedSterile },
    places: byPlace
      .sort((a, b) => b.pieces - a.pieces)
      .flatMap(({ place }) =>
        place ? [{ id: place.id, name: place.name, form: stockForm.parse(place.form) }] : [],
      ),
    alike,
    onOrder,
  };
}

/** Items that can be received, by code. */
export async function receivableItems(db: Reading): Promise<{ id: string; code: string; name: string }[]> {
  mayRead(db, 'receiveStock');
  return db.read
    .select({ id: items.id, code: items.code, name: items.name })
    .from(items)
    .where(eq(items.status, 'current'))
    .orderBy(asc(items.code));
}

export interface DeliveryOnFile {
  id: string;
  supplier: string;
  reference: string;
  arrivedOn: string;
  by: string;
  receivedAt: string;
  lines: {
    id: string;
    itemId: string;
    name: string;
    lot: string | null;
    useBy: string | null;
    pieces: number;
    place: string;
    heldBecause: string | null;
  }[];
}

/** The latest deliveries with their lines, newest first. */
export async function recentDeliveries(db: Reading, limit: number): Promise<DeliveryOnFile[]> {
  mayRead(db, 'receiveStock');
  return deliveriesWhere(db, undefined, limit);
}

/** As `recentDeliveries`, those before one of them. `undefined`: that one is not there. */
export async function deliveriesAfter(
  db: Reading,
  { after, limit }: { after: string | null; limit: number },
): Promise<DeliveryOnFile[] | undefined> {
  mayRead(db, 'receiveStock');
  if (after === null) return deliveriesWhere(db, undefined, limit);
  const [last] = await db.read
    .select({ at: deliveries.receivedAt })
    .from(deliveries)
    .where(eq(deliveries.id, after));
  if (!last) return undefined;
  const { receivedAt, id } = deliveries;
  return deliveriesWhere(db, sql`(${receivedAt}, ${id}) < (${last.at}, ${after})`, limit);
}

/** One delivery with its lines; `null` where there is none of that id. */
export async function findDelivery(db: Reading, id: string): Promise<DeliveryOnFile | null> {
  mayRead(db, 'receiveStock');
  return (await deliveriesWhere(db, eq(deliveries.id, id), 1))[0] ?? null;
}

async function deliveriesWhere(
  db: Reading,
  where: SQL | undefined,
  limit: number,
): Promise<DeliveryOnFile[]> {
  const heads = db.read
    .$with('heads')
    .as(
      db.read
        .select({ id: deliveries.id })
        .from(deliveries)
        .where(where)
        .orderBy(desc(deliveries.receivedAt), desc(deliveries.id))
        .limit(limit),
    );
  const rows = await db.read
    .with(heads)
    .select({
      delivery: deliveries,
      line: deliveryLines,
      by: people.name,
      item: items.name,
      place: places.name,
    })
    .from(heads)
    .innerJoin(deliveries, eq(deliveries.id, heads.id))
    .innerJoin(deliveryLines, eq(deliveryLines.deliveryId, deliveries.id))
    .innerJoin(people, eq(people.id, deliveries.receivedBy))
    .innerJoin(items, eq(items.id, deliveryLines.itemId))
    .innerJoin(places, eq(places.id, deliveryLines.placeId))
    .orderBy(desc(deliveries.receivedAt), desc(deliveries.id), asc(deliveryLines.lineNo));
  return [...groupBy(rows, ({ delivery }) => delivery.id).values()].flatMap((own): DeliveryOnFile[] => {
    const [first] = own;
    if (!first) return [];
    const { id, supplier, reference, arrivedOn, receivedAt } = first.delivery;
    return [
      {
        ...{ id, supplier, reference, arrivedOn, receivedAt, by: first.by },
        lines: own.map(({ line, item, place }) => ({
          id: line.id,
          itemId: line.itemId,
          name: item,
          lot: line.lot,
          useBy: line.useBy,
          pieces: line.count * line.piecesEach,
          place,
          heldBecause: line.heldBecause,
        })),
      },
    ];
  });
}
