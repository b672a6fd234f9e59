import { sql } from 'drizzle-orm';
import type { HoldingFacts, ShelfFacts, StockCountFacts } from '@/lib/fhir/inventoryReport';
import { groupBy } from '@/lib/lists/groupBy';
import { mayRead, type Reading } from '../../reader';
import { hiddenFrom } from '../bench/blind';
import { heapsHiddenFrom } from '../shelf/blindHeaps';
import { countsOnRecord } from '../shelf/countOnRecord';
import { among, every, following, type PageAsked, type PageOf, pageOf } from './conditions';

export type Report =
  | { kind: 'shelf'; id: string; facts: ShelfFacts }
  | { kind: 'holding'; id: string; facts: HoldingFacts }
  | { kind: 'stockCount'; id: string; facts: StockCountFacts };

interface Named {
  id: string;
  code: string;
  name: string;
  gtin: string | null;
}

/**
 * What lies on the shelves by place, what sets hold, and counts of the shelf, by id: `place_…`, `set_…`, `stockCount_…`. What
 * its reader is counting now is left out of the figures.
 */
export async function reportsPage(db: Reading, asked: PageAsked): Promise<PageOf<Report>> {
  mayRead(db, 'readHospital');
  const heads = await db.read.all<{ id: string; kind: Report['kind'] }>(sql`
    SELECT id, kind FROM (
      SELECT id, 'shelf' AS kind FROM places WHERE withdrawn_at IS NULL
        OR EXISTS (SELECT 1 FROM stock WHERE stock.place_id = places.id AND quantity > 0)
      UNION ALL SELECT id, 'holding' FROM sets WHERE withdrawn_at IS NULL
      UNION ALL SELECT id, 'stockCount' FROM stock_counts WHERE abandoned_at IS NULL)
    WHERE ${every(among(sql`id`, asked.ids), following(sql`id`, asked.after))}
    ORDER BY id LIMIT ${asked.limit + 1}`);
  const page = pageOf(heads, asked.limit);
  const idsOf = (kind: Report['kind']) => page.rows.filter((one) => one.kind === kind).map(({ id }) => id);
  const found = new Map(
    [
      await shelves(db, idsOf('shelf')),
      await holdings(db, idsOf('holding')),
      await stockCounts(db, idsOf('stockCount')),
    ]
      .flat()
      .map((report) => [report.id, report]),
  );
  return { more: page.more, rows: page.rows.flatMap(({ id }) => found.get(id) ?? []) };
}

async function shelves(db: Reading, ids: readonly string[]): Promise<Report[]> {
  if (ids.length === 0) return [];
  const hidden = await heapsHiddenFrom(db);
  const rows = await db.read.all<{ id: string; name: string }>(
    sql`SELECT id, name FROM places WHERE ${among(sql`id`, ids)}`,
  );
  const heaps = groupBy(
    await db.read.all<{ stock_id: string; quantity: number; place_id: string } & Named>(sql`
      SELECT stock.id AS stock_id, stock.quantity, stock.place_id, items.id, items.code, items.name, items.gtin
      FROM stock JOIN items ON items.id = stock.item_id
      WHERE (stock.quantity > 0 OR ${among(sql`stock.id`, [...hidden])}) AND ${among(sql`stock.place_id`, ids)}
      ORDER BY stock.id`),
    ({ place_id }) => place_id,
  );
  return rows.map((place) => ({
    kind: 'shelf',
    id: place.id,
    facts: {
      place,
      heaps: (heaps.get(place.id) ?? []).map(({ stock_id, quantity, ...item }) => ({
        id: stock_id,
        item,
        pieces: hidden.has(stock_id) ? 'masked' : quantity,
      })),
    },
  }));
}

async function holdings(db: Reading, ids: readonly string[]): Promise<Report[]> {
  if (ids.length === 0) return [];
  const hidden = await hiddenFrom(db);
  const rows = await db.read.all<{
    id: string;
    code: string;
    place_id: string | null;
    place: string | null;
    counted_at: string | null;
  }>(sql`
    SELECT sets.id, sets.code, sets.place_id, places.name AS place,
      (SELECT max(counted_at) FROM counts WHERE counts.set_id = sets.id) AS counted_at
    FROM sets LEFT JOIN places ON places.id = sets.place_id WHERE ${among(sql`sets.id`, ids)}`);
  const lines = groupBy(
    await db.read.all<{ set_id: string; found: number; unsound: number } & Named>(sql`
      SELECT held.set_id, held.found, held.unsound, items.id, items.code, items.name, items.gtin
      FROM set_contents held JOIN sets ON sets.id = held.set_id
      JOIN configuration_lines line ON line.id = held.line_id AND line.version_id = sets.version_id
      JOIN items ON items.id = line.item_id
      WHERE ${among(sql`held.set_id`, ids)} ORDER BY line.layer, line.row, line.slot`),
    ({ set_id }) => set_id,
  );
  return rows.map(({ id, code, place_id, place, counted_at }) => ({
    kind: 'holding',
    id,
    facts: {
      id,
      code,
      place: place_id === null ? null : { id: place_id, name: place ?? place_id },
      countedAt: counted_at,
      lines: hidden.has(id)
        ? null
        : (lines.get(id) ?? []).map(({ found, unsound, ...item }) => ({ item, found, unsound })),
    },
  }));
}

async function stockCounts(db: Reading, ids: readonly string[]): Promise<Report[]> {
  if (ids.length === 0) return [];
  const hidden = await heapsHiddenFrom(db);
  const counts = await countsOnRecord(db.read, ids);
  const named = <T extends { id: string }>(rows: readonly T[]) => new Map(rows.map((row) => [row.id, row]));
  const items = named(
    await db.read.all<Named>(sql`
      SELECT id, code, name, gtin FROM items WHERE ${among(
        sql`id`,
        counts.flatMap(({ lines }) => lines.map(({ row }) => row.itemId)),
      )}`),
  );
  const places = named(
    await db.read.all<{ id: string; name: string }>(
      sql`SELECT id, name FROM places WHERE ${among(
        sql`id`,
        counts.map(({ count }) => count.placeId),
      )}`,
    ),
  );
  return counts.flatMap(({ count, lines, stage }): Report[] => {
    const place = places.get(count.placeId);
    const at = count.recountClosedAt ?? count.closedAt;
    if (!place) return [];
    const isFinished = at !== null && (stage === 'done' || stage === 'toDecide');
    const figures = lines.flatMap(({ row, standing }) => {
      const item = items.get(row.itemId);
      if (!item) return [];
      const pieces =
        row.stockId !== null && hidden.has(row.stockId)
          ? ('masked' as const)
          : (standing?.pieces ?? ('unknown' as const));
      return [{ stockId: row.stockId, item, pieces }];
    });
    return [
      {
        kind: 'stockCount',
        id: count.id,
        facts: {
          id: count.id,
          place,
          begunAt: count.begunAt,
          finished: isFinished ? { at, lines: figures } : null,
        },
      },
    ];
  });
}
