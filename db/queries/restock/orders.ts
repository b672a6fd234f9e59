import { and, asc, count, desc, eq, gte, lt, or, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import { mayRead, type Reading } from '../../reader';
import {
  items,
  makers,
  people,
  places,
  restockLines,
  restocks,
  supplyOrderLines,
  supplyOrderParts,
  supplyOrders,
} from '../../schema';

const here = sql<number>`(SELECT coalesce(sum(part.quantity), 0) FROM ${supplyOrderParts} part WHERE part.order_line_id = ${supplyOrderLines.id})`;

export interface OrderRow {
  id: string;
  number: string;
  maker: string;
  state: 'open' | 'closed';
  orderedBy: string;
  orderedAt: string;
  expectedOn: string | null;
  lines: number;
  ordered: number;
  here: number;
  /** `null`: the price of some of it is not stated. */
  pence: number | null;
  closedBecause: string | null;
}

/**
 * Every order, the newest first.
 *
 * @param closedSince of those closed, only what was closed at or after this instant; `null`: none; left out: all
 */
export async function listOrders(
  db: Reading,
  { closedSince }: { closedSince?: string | null } = {},
): Promise<OrderRow[]> {
  mayRead(db, 'readHospital');
  const open = eq(supplyOrders.state, 'open');
  const wanted =
    closedSince === undefined
      ? undefined
      : closedSince === null
        ? open
        : or(open, gte(supplyOrders.closedAt, closedSince));
  const rows = await db.read
    .select({
      id: supplyOrders.id,
      number: supplyOrders.number,
      maker: makers.name,
      state: supplyOrders.state,
      orderedBy: people.name,
      orderedAt: supplyOrders.orderedAt,
      expectedOn: supplyOrders.expectedOn,
      closedBecause: supplyOrders.closedBecause,
      lines: sql<number>`count(*)`,
      ordered: sql<number>`sum(${supplyOrderLines.ordered})`,
      here: sql<number>`sum(${here})`,
      pence: sql<
        number | null
      >`iif(count(${supplyOrderLines.unitPence}) = count(*), sum(${supplyOrderLines.ordered} * ${supplyOrderLines.unitPence}), NULL)`,
    })
    .from(supplyOrders)
    .innerJoin(makers, eq(makers.id, supplyOrders.makerId))
    .innerJoin(people, eq(people.id, supplyOrders.orderedBy))
    .innerJoin(supplyOrderLines, eq(supplyOrderLines.orderId, supplyOrders.id))
    .where(wanted)
    .groupBy(supplyOrders.id)
    .orderBy(desc(supplyOrders.number));
  return rows.map((row) => ({ ...row, state: row.state === 'closed' ? 'closed' : 'open' }));
}

/** How many orders were closed before an instant. */
export async function ordersClosedBefore(db: Reading, closedSince: string): Promise<number> {
  mayRead(db, 'readHospital');
  const [row] = await db.read
    .select({ n: count() })
    .from(supplyOrders)
    .where(and(eq(supplyOrders.state, 'closed'), lt(supplyOrders.closedAt, closedSince)));
  return row?.n ?? 0;
}

export interface OrderLine {
  id: string;
  itemId: string;
  code: string;
  gtin: string | null;
  name: string;
  suppliedSterile: boolean | null;
  ordered: number;
  packOf: number;
  unitPence: number | null;
  here: number;
  sentence: string;
  changedBecause: string | null;
}

export interface OrderPart {
  id: string;
  lineId: string;
  code: string;
  name: string;
  quantity: number;
  lot: string | null;
  useBy: string | null;
  place: string;
  by: string;
  doneAt: string;
}

export interface Order {
  id: string;
  number: string;
  revision: number;
  state: 'open' | 'closed';
  maker: string;
  restock: string;
  proposedBy: string;
  orderedBy: string;
  orderedAt: string;
  expectedOn: string | null;
  closedBy: string | null;
  closedAt: string | null;
  closedBecause: string | null;
  lines: OrderLine[];
  parts: OrderPart[];
}

const orderer = alias(people, 'orderer');
const closer = alias(people, 'closer');

/** One order with its lines and everything that came of it; `null` where there is none of that id. */
export async function findOrder(db: Reading, id: string): Promise<Order | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [found] = await read
    .select({
      row: supplyOrders,
      maker: makers.name,
      restock: restocks.number,
      proposedBy: people.name,
      orderedBy: orderer.name,
      closedBy: closer.name,
    })
    .from(supplyOrders)
    .innerJoin(makers, eq(makers.id, supplyOrders.makerId))
    .innerJoin(restocks, eq(restocks.id, supplyOrders.restockId))
    .innerJoin(people, eq(people.id, restocks.proposedBy))
    .innerJoin(orderer, eq(orderer.id, supplyOrders.orderedBy))
    .leftJoin(closer, eq(closer.id, supplyOrders.closedBy))
    .where(eq(supplyOrders.id, id));
  if (!found) return null;
  const [lines, parts] = await Promise.all([
    read
      .select({
        id: supplyOrderLines.id,
        itemId: items.id,
        code: items.code,
        gtin: items.gtin,
        name: items.name,
        suppliedSterile: items.suppliedSterile,
        ordered: supplyOrderLines.ordered,
        packOf: supplyOrderLines.packOf,
        unitPence: supplyOrderLines.unitPence,
        here,
        sentence: restockLines.sentence,
        changedBecause: restockLines.changedBecause,
      })
      .from(supplyOrderLines)
      .innerJoin(items, eq(items.id, supplyOrderLines.itemId))
      .innerJoin(restockLines, eq(restockLines.id, supplyOrderLines.restockLineId))
      .where(eq(supplyOrderLines.orderId, id))
      .orderBy(asc(items.code)),
    read
      .select({
        id: supplyOrderParts.id,
        lineId: supplyOrderParts.orderLineId,
        code: items.code,
        name: items.name,
        quantity: supplyOrderParts.quantity,
        lot: supplyOrderParts.lot,
        useBy: supplyOrderParts.useBy,
        place: places.name,
        by: people.name,
        doneAt: supplyOrderParts.doneAt,
      })
      .from(supplyOrderParts)
      .innerJoin(supplyOrderLines, eq(supplyOrderLines.id, supplyOrderParts.orderLineId))
      .innerJoin(items, eq(items.id, supplyOrderLines.itemId))
      .innerJoin(places, eq(places.id, supplyOrderParts.placeId))
      .innerJoin(people, eq(people.id, supplyOrderParts.personId))
      .where(eq(supplyOrderLines.orderId, id))
      .orderBy(asc(supplyOrderParts.doneAt), asc(supplyOrderParts.id)),
  ]);
  const { row, ...named } = found;
  return { ...row, ...named, state: row.state === 'closed' ? 'closed' : 'open', lines, parts };
}
