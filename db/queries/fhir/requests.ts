import { sql } from 'drizzle-orm';
import type { DateBounds } from '@/lib/fhir/dateBounds';
import type { RequestFacts } from '@/lib/fhir/supplyRequest';
import { mayRead, type Reading } from '../../reader';
import { among, every, following, type PageAsked, type PageOf, pageOf, within } from './conditions';

export interface RequestsAsked extends PageAsked {
  /** As `supplyRequestStatus` says it. */
  statuses: readonly string[] | null;
  orders: readonly string[] | null;
  proposed: readonly DateBounds[];
  changed: readonly DateBounds[];
}

interface Row {
  id: string;
  item_id: string;
  code: string;
  name: string;
  gtin: string | null;
  maker_id: string;
  maker: string;
  proposal: RequestFacts['proposal'];
  proposed: number;
  approved: number | null;
  proposed_at: string;
  sentence: string;
  number: string | null;
  state: 'open' | 'closed';
  ordered: number;
  here: number;
  expected_on: string | null;
  changed_at: string;
}

const HERE = sql`(SELECT coalesce(sum(quantity), 0) FROM supply_order_parts part WHERE part.order_line_id = ordered.id)`;

/** Lines of proposals with what was ordered of them and what of that is here, by id. */
export async function requestsPage(db: Reading, asked: RequestsAsked): Promise<PageOf<RequestFacts>> {
  mayRead(db, 'readHospital');
  const rows = await db.read.all<Row>(sql`
    SELECT * FROM (
      SELECT line.id, line.item_id, items.code, items.name, items.gtin, line.maker_id, makers.name AS maker,
        restock.state AS proposal, line.proposed, line.approved, restock.proposed_at, line.sentence, placed.number, placed.state,
        ordered.ordered, ${HERE} AS here, placed.expected_on,
        max(restock.proposed_at, coalesce(restock.decided_at, ''), coalesce(placed.ordered_at, ''),
          coalesce(placed.closed_at, ''), coalesce((SELECT max(entered_at) FROM supply_order_parts part
            WHERE part.order_line_id = ordered.id), '')) AS changed_at,
        -- the table of lib/fhir/supplyRequest.ts, so that a status can be searched for; a test compares the two
        CASE WHEN restock.state = 'proposed' THEN 'draft'
          WHEN restock.state <> 'approved' OR placed.id IS NULL THEN 'cancelled'
          WHEN ${HERE} >= ordered.ordered THEN 'completed'
          WHEN placed.state = 'open' THEN 'active' ELSE 'cancelled' END AS status
      FROM restock_lines line JOIN restocks restock ON restock.id = line.restock_id
      JOIN items ON items.id = line.item_id JOIN makers ON makers.id = line.maker_id
      LEFT JOIN supply_order_lines ordered ON ordered.restock_line_id = line.id
      LEFT JOIN supply_orders placed ON placed.id = ordered.order_id
      WHERE ${every(
        among(sql`line.id`, asked.ids),
        following(sql`line.id`, asked.after),
        among(sql`placed.number`, asked.orders),
        within(sql`restock.proposed_at`, asked.proposed),
      )})
    WHERE ${every(among(sql`status`, asked.statuses), within(sql`changed_at`, asked.changed))}
    ORDER BY id LIMIT ${asked.limit + 1}`);
  return pageOf(rows.map(factsOf), asked.limit);
}

const factsOf = (row: Row): RequestFacts => ({
  id: row.id,
  item: { id: row.item_id, code: row.code, name: row.name, gtin: row.gtin },
  maker: { id: row.maker_id, name: row.maker },
  proposal: row.proposal,
  proposed: row.proposed,
  approved: row.approved,
  proposedAt: row.proposed_at,
  sentence: row.sentence,
  order:
    row.number === null
      ? null
      : {
          number: row.number,
          state: row.state,
          ordered: row.ordered,
          here: row.here,
          expectedOn: row.expected_on,
        },
  changedAt: row.changed_at,
});
