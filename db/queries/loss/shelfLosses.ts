import { sql } from 'drizzle-orm';
import { groupBy } from '@/lib/lists/groupBy';
import { type ShelfLoss, type ShelfOfItem, shelfLoss } from '@/lib/loss/shelf';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { mayRead, type Reading } from '../../reader';

/**
 * What lies sterile on the shelf with a use-by, item by item, with what is likely to be lost of it; the most costly first.
 *
 * @param months whole months before this one that use is read from
 */
export async function loadShelfLosses(db: Reading, today: PlainDate, months: number): Promise<ShelfLoss[]> {
  mayRead(db, 'readHospital');
  const all = monthsBefore(today, months);
  const [first] = all;
  const heaps = await db.read.all<{
    id: string;
    item_id: string;
    code: string;
    name: string;
    unit_cost_pence: number | null;
    lot: string | null;
    use_by: string;
    quantity: number;
    place: string;
  }>(sql`
    SELECT stock.id, stock.item_id, items.code, items.name, items.unit_cost_pence, stock.lot, stock.use_by,
      stock.quantity, places.name AS place
    FROM stock JOIN items ON items.id = stock.item_id JOIN places ON places.id = stock.place_id
    WHERE stock.quantity > 0 AND stock.use_by IS NOT NULL AND stock.form <> 'unsterile' AND stock.owner = 'ours'
    ORDER BY items.code, stock.use_by, stock.id`);
  const left = await db.read.all<{ item_id: string; month: string; units: number }>(sql`
    SELECT item_id, month, units FROM shelf_months
    WHERE month >= ${first ?? today.slice(0, 7)} AND month < ${today.slice(0, 7)}`);
  const leftBy = new Map(left.map(({ item_id, month, units }) => [`${item_id} ${month}`, units]));
  return [...groupBy(heaps, ({ item_id }) => item_id)]
    .flatMap(([itemId, lots]) => {
      const [head] = lots;
      if (!head) return [];
      const shelf: ShelfOfItem = {
        itemId,
        code: head.code,
        name: head.name,
        unitPence: head.unit_cost_pence,
        lots: lots.map(({ id, lot, use_by, quantity, place }) => ({
          stockId: id,
          lot,
          useBy: plainDate.parse(use_by),
          units: quantity,
          place,
        })),
        months: all.map((month) => Math.max(0, leftBy.get(`${itemId} ${month}`) ?? 0)),
      };
      return shelfLoss(shelf, today) ?? [];
    })
    .sort(
      (a, b) =>
        (b.loss.expectedLostPence ?? 0) - (a.loss.expectedLostPence ?? 0) ||
        b.loss.expectedLost - a.loss.expectedLost,
    );
}

/** The whole months before the present one, the earliest first, as `2026-03`. */
function monthsBefore(today: PlainDate, count: number): string[] {
  const [year, month] = [Number(today.slice(0, 4)), Number(today.slice(5, 7))];
  return Array.from({ length: count }, (_, at) => {
    const number = year * 12 + (month - 1) - count + at;
    return `${Math.floor(number / 12)}-${String((number % 12) + 1).padStart(2, '0')}`;
  });
}
