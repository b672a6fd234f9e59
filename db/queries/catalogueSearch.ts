import { and, asc, eq, inArray, isNotNull, isNull, type SQL, sql } from 'drizzle-orm';
import { missingValues } from '@/lib/catalogue/missing';
import { type CatalogueSearch, matchExpression } from '@/lib/catalogue/search';
import type { Database } from '../client';
import { itemFromRow } from '../mappers/item';
import { mayRead, type Reading } from '../reader';
import { items, makers } from '../schema';

/** One line of the catalogue list. */
export interface CatalogueRow {
  id: string;
  code: string;
  name: string;
  nickname: string | null;
  kind: string;
  maker: string;
  side: string | null;
  material: string | null;
  suppliedSterile: boolean | null;
  diameterUm: number | null;
  lengthUm: number | null;
  massGrams: number | null;
  unitCostPence: number | null;
  gtin: string | null;
  status: string;
  revision: number;
  /** How many values nobody has stated. */
  missing: number;
}

/**
 * The items a search leaves: an item whose code is what was typed first, then those whose code begins with it, then by code.
 * Full-text search reads its own index; the rest narrows by columns.
 */
export async function searchCatalogue(db: Reading, search: CatalogueSearch): Promise<CatalogueRow[]> {
  mayRead(db, 'readHospital');
  const typed = search.q.trim();
  const match = matchExpression(typed);
  if (typed !== '' && match === null) return [];
  const [ids, all] = await Promise.all([
    db.read
      .select({ id: items.id })
      .from(items)
      .where(and(...conditions(search, match)))
      .orderBy(asc(items.code)),
    keptRows(db.read),
  ]);
  const found = ids.flatMap(({ id }) => all.get(id) ?? []);
  const wanted = search.missing ? found.filter((row) => row.missing > 0) : found;
  return match === null ? wanted : closestFirst(wanted, typed);
}

const kept = new WeakMap<Database['read'], { stamp: string; rows: ReadonlyMap<string, CatalogueRow> }>();

/** Every item as a line of the list, worked out once and kept until an item or a maker changes: revisions only grow. */
async function keptRows(read: Database['read']): Promise<ReadonlyMap<string, CatalogueRow>> {
  const [asked] = await read.all<{ stamp: string }>(
    sql`SELECT count(*) || '/' || coalesce(sum(revision), 0) || '/' || coalesce(max(rowid), 0) || '/' ||
      (SELECT json_group_array(json_array(id, name)) FROM ${makers}) AS stamp FROM ${items}`,
  );
  const stamp = asked?.stamp ?? '';
  const before = kept.get(read);
  if (before?.stamp === stamp) return before.rows;
  const rows = await read
    .select({
      id: items.id,
      code: items.code,
      name: items.name,
      nickname: items.nickname,
      kind: items.kind,
      maker: makers.name,
      side: items.side,
      material: items.material,
      suppliedSterile: items.suppliedSterile,
      diameterUm: items.diameterUm,
      lengthUm: items.lengthUm,
      massGrams: items.massGrams,
      unitCostPence: items.unitCostPence,
      gtin: items.gtin,
      status: items.status,
      revision: items.revision,
    })
    .from(items)
    .innerJoin(makers, eq(makers.id, items.makerId));
  const missing = await missingCounts(read, rows);
  const known = new Map(
    rows.map((row) => [row.id, { ...row, missing: missing.get(`${row.id}:${row.revision}`) ?? 0 }]),
  );
  kept.set(read, { stamp, rows: known });
  return known;
}

function conditions(search: CatalogueSearch, match: string | null): (SQL | undefined)[] {
  return [
    match === null
      ? undefined
      : sql`${items}.rowid IN (SELECT rowid FROM items_search WHERE items_search MATCH ${match})`,
    search.kind ? eq(items.kind, search.kind) : undefined,
    search.maker ? eq(items.makerId, search.maker) : undefined,
    search.material ? eq(items.material, search.material) : undefined,
    search.side ? eq(items.side, search.side) : undefined,
    search.diameterUm ? eq(items.diameterUm, search.diameterUm) : undefined,
    search.status ? eq(items.status, search.status) : undefined,
    search.sterile === 'unknown' ? isNull(items.suppliedSterile) : undefined,
    search.sterile === 'yes' || search.sterile === 'no'
      ? eq(items.suppliedSterile, search.sterile === 'yes')
      : undefined,
  ];
}

function closestFirst<Row extends { code: string }>(rows: Row[], typed: string): Row[] {
  const wanted = typed.toLowerCase();
  const distance = ({ code }: Row) =>
    code.toLowerCase() === wanted ? 0 : code.toLowerCase().startsWith(wanted) ? 1 : 2;
  return rows
    .map((row, index) => ({ row, index, distance: distance(row) }))
    .sort((a, b) => a.distance - b.distance || a.index - b.index)
    .map(({ row }) => row);
}

const counted = new WeakMap<Database['read'], Map<string, number>>();

/**
 * How many values of each row nobody has stated. Working that out needs the whole item; an item of one revision never
 * changes, so it is worked out once.
 */
async function missingCounts(
  read: Database['read'],
  rows: { id: string; revision: number }[],
): Promise<Map<string, number>> {
  const known = counted.get(read) ?? new Map<string, number>();
  counted.set(read, known);
  const wanted = rows.filter(({ id, revision }) => !known.has(`${id}:${revision}`)).map(({ id }) => id);
  if (wanted.length > 0) {
    for (const row of await read.select().from(items).where(inArray(items.id, wanted))) {
      known.set(`${row.id}:${row.revision}`, missingValues(itemFromRow(row)).length);
    }
  }
  return known;
}

/** What the filters offer: only what the catalogue has. */
export interface CatalogueFacets {
  total: number;
  kinds: string[];
  makers: { id: string; name: string }[];
  materials: string[];
  diametersUm: number[];
}

export async function catalogueFacets(db: Reading): Promise<CatalogueFacets> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [kinds, makerRows, materials, diameters, [count]] = await Promise.all([
    read.selectDistinct({ kind: items.kind }).from(items),
    read.select().from(makers).orderBy(asc(makers.name)),
    read.selectDistinct({ material: items.material }).from(items).where(isNotNull(items.material)),
    read
      .selectDistinct({ um: items.diameterUm })
      .from(items)
      .where(isNotNull(items.diameterUm))
      .orderBy(items.diameterUm),
    read.select({ total: sql<number>`count(*)` }).from(items),
  ]);
  return {
    total: count?.total ?? 0,
    kinds: kinds.map(({ kind }) => kind),
    makers: makerRows,
    materials: materials.flatMap(({ material }) => (material === null ? [] : [material])),
    diametersUm: diameters.flatMap(({ um }) => (um === null ? [] : [um])),
  };
}
