import { sql } from 'drizzle-orm';
import type { ItemKind } from '@/lib/catalogue/item';
import type { HeapFacts } from '@/lib/fhir/inventoryItem';
import { stockForm } from '@/lib/stock/stock';
import { mayRead, type Reading } from '../../reader';
import { heapsHiddenFrom } from '../shelf/blindHeaps';
import {
  among,
  every,
  following,
  type ItemAsked,
  ofItems,
  type PageAsked,
  type PageOf,
  pageOf,
} from './conditions';

export interface HeapsAsked extends PageAsked {
  item: ItemAsked;
  lots: readonly string[] | null;
  /** As `inventoryItemStatus` says it. */
  statuses: readonly string[] | null;
}

interface Row {
  id: string;
  item_id: string;
  code: string;
  name: string;
  gtin: string | null;
  kind: ItemKind;
  form: string;
  lot: string | null;
  use_by: string | null;
  quantity: number;
  owner: 'ours' | 'consignment';
  place_id: string;
  place: string;
  held_because: string | null;
}

/** Heaps of the shelf by id, used-up ones among them. Of one its reader counts now, no quantity. */
export async function heapsPage(db: Reading, asked: HeapsAsked): Promise<PageOf<HeapFacts>> {
  mayRead(db, 'readHospital');
  const hidden = await heapsHiddenFrom(db);
  const isHidden = among(sql`stock.id`, [...hidden]);
  const rows = await db.read.all<Row>(sql`
    SELECT stock.id, stock.item_id, items.code, items.name, items.gtin, items.kind, stock.form, stock.lot, stock.use_by,
      stock.quantity, stock.owner, stock.place_id, places.name AS place, stock.held_because
    FROM stock JOIN items ON items.id = stock.item_id JOIN places ON places.id = stock.place_id
    WHERE ${every(
      among(sql`stock.id`, asked.ids),
      following(sql`stock.id`, asked.after),
      ofItems(sql`stock.item_id`, asked.item),
      among(sql`stock.lot`, asked.lots),
      among(
        sql`CASE WHEN ${isHidden} THEN 'unknown' WHEN stock.quantity > 0 THEN 'active' ELSE 'inactive' END`,
        asked.statuses,
      ),
    )}
    ORDER BY stock.id LIMIT ${asked.limit + 1}`);
  return pageOf(
    rows.map((row) => factsOf(row, hidden.has(row.id))),
    asked.limit,
  );
}

const factsOf = (row: Row, hidden: boolean): HeapFacts => ({
  id: row.id,
  item: { id: row.item_id, code: row.code, name: row.name, gtin: row.gtin, kind: row.kind },
  form: stockForm.parse(row.form),
  lot: row.lot,
  useBy: row.use_by,
  quantity: hidden ? null : row.quantity,
  owner: row.owner,
  place: { id: row.place_id, name: row.place },
  heldBecause: row.held_because,
});
