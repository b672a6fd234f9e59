import { sql } from 'drizzle-orm';
import type { DateBounds } from '@/lib/fhir/dateBounds';
import type { DeliveryFacts } from '@/lib/fhir/supplyDelivery';
import { mayRead, type Reading } from '../../reader';
import { heapsHiddenFrom } from '../shelf/blindHeaps';
import { among, every, following, type PageAsked, type PageOf, pageOf, within } from './conditions';

export interface DeliveriesAsked extends PageAsked {
  lots: readonly string[] | null;
  changed: readonly DateBounds[];
}

interface Row {
  id: string;
  came_from: DeliveryFacts['from'];
  restock_line_id: string | null;
  supplier_id: string | null;
  supplier: string;
  stock_id: string;
  quantity: number;
  place_id: string;
  place: string;
  came_at: string;
  entered_at: string;
}

/**
 * What came, of orders and by itself, by id: `deliveryLine_…` before `orderPart_…`. Of what was put on a heap its reader counts now,
 * no quantity.
 */
export async function deliveriesPage(db: Reading, asked: DeliveriesAsked): Promise<PageOf<DeliveryFacts>> {
  mayRead(db, 'readHospital');
  const hidden = await heapsHiddenFrom(db);
  const rows = await db.read.all<Row>(sql`
    SELECT came.*, places.name AS place FROM (
      SELECT line.id, 'delivery' AS came_from, ordered.restock_line_id, NULL AS supplier_id, delivery.supplier, line.stock_id,
        line.count * line.pieces_each AS quantity, line.place_id, line.lot, delivery.arrived_on AS came_at,
        delivery.received_at AS entered_at
      FROM delivery_lines line JOIN deliveries delivery ON delivery.id = line.delivery_id
      LEFT JOIN supply_order_lines ordered ON ordered.id = line.order_line_id
      UNION ALL
      SELECT part.id, 'order', ordered.restock_line_id, makers.id, makers.name, part.stock_id, part.quantity, part.place_id,
        part.lot, part.done_at, part.entered_at
      FROM supply_order_parts part JOIN supply_order_lines ordered ON ordered.id = part.order_line_id
      JOIN supply_orders placed ON placed.id = ordered.order_id JOIN makers ON makers.id = placed.maker_id) came
    JOIN places ON places.id = came.place_id
    WHERE ${every(
      among(sql`came.id`, asked.ids),
      following(sql`came.id`, asked.after),
      among(sql`came.lot`, asked.lots),
      within(sql`came.entered_at`, asked.changed),
    )}
    ORDER BY came.id LIMIT ${asked.limit + 1}`);
  return pageOf(
    rows.map((row) => factsOf(row, hidden.has(row.stock_id))),
    asked.limit,
  );
}

const factsOf = (row: Row, hidden: boolean): DeliveryFacts => ({
  id: row.id,
  from: row.came_from,
  restockLineId: row.restock_line_id,
  supplier: { id: row.supplier_id, name: row.supplier },
  stockId: row.stock_id,
  quantity: hidden ? null : row.quantity,
  place: { id: row.place_id, name: row.place },
  cameAt: row.came_at,
  enteredAt: row.entered_at,
});
