import { asc, eq, sql } from 'drizzle-orm';
import type { Item } from '@/lib/catalogue/item';
import type { ConfigurationFacts } from '@/lib/fhir/deviceDefinition';
import { groupBy } from '@/lib/lists/groupBy';
import { itemFromRow } from '../../mappers/item';
import { mayRead, type Reading } from '../../reader';
import { items, makers } from '../../schema';
import { among, every, following, type PageAsked, type PageOf, pageOf } from './conditions';

export type Definition =
  | { kind: 'item'; id: string; item: Item; maker: { id: string; name: string } }
  | ({ kind: 'configuration' } & ConfigurationFacts);

export interface DefinitionsAsked extends PageAsked {
  /** By any of the three where one of them is asked for. */
  by: { codes: readonly string[]; gtins: readonly string[]; versions: readonly string[] } | null;
}

/** Items of the catalogue and versions of configurations that are or were in force, by id: `item_…` comes before `version_…`. */
export async function definitionsPage(db: Reading, asked: DefinitionsAsked): Promise<PageOf<Definition>> {
  mayRead(db, 'readHospital');
  const ofCatalogue = await itemDefinitions(db, asked);
  const room = asked.limit + 1 - ofCatalogue.length;
  const ofSets = room > 0 ? await configurationDefinitions(db, asked, room) : [];
  return pageOf([...ofCatalogue, ...ofSets], asked.limit);
}

async function itemDefinitions({ read }: Reading, asked: DefinitionsAsked): Promise<Definition[]> {
  const { by } = asked;
  const rows = await read
    .select({ row: items, maker: makers })
    .from(items)
    .innerJoin(makers, eq(makers.id, items.makerId))
    .where(
      every(
        among(sql`${items.id}`, asked.ids),
        following(sql`${items.id}`, asked.after),
        by === null
          ? null
          : sql`(${among(sql`${items.code}`, by.codes)} OR ${among(sql`${items.gtin}`, by.gtins)})`,
      ),
    )
    .orderBy(asc(items.id))
    .limit(asked.limit + 1);
  return rows.map(({ row, maker }) => ({ kind: 'item', id: row.id, item: itemFromRow(row), maker }));
}

async function configurationDefinitions(
  { read }: Reading,
  asked: DefinitionsAsked,
  room: number,
): Promise<Definition[]> {
  const label = sql`configuration.code || '/' || version.version`;
  const versions = await read.all<{
    id: string;
    version: number;
    code: string;
    name: string;
    note: string | null;
  }>(sql`
    SELECT version.id, version.version, configuration.code, configuration.name, version.note
    FROM configuration_versions version JOIN configurations configuration ON configuration.id = version.configuration_id
    WHERE version.status <> 'draft' AND ${every(
      among(sql`version.id`, asked.ids),
      following(sql`version.id`, asked.after),
      asked.by && among(label, asked.by.versions),
    )}
    ORDER BY version.id LIMIT ${room}`);
  const ids = versions.map(({ id }) => id);
  const parts = groupBy(
    await read.all<{ version_id: string; item_id: string; count: number }>(sql`
      SELECT version_id, item_id, sum(pieces) AS count FROM (
        SELECT version_id, item_id, expected AS pieces FROM configuration_lines WHERE ${among(sql`version_id`, ids)}
        UNION ALL SELECT id, basket_item_id, 1 FROM configuration_versions
          WHERE basket_item_id IS NOT NULL AND ${among(sql`id`, ids)}
        UNION ALL SELECT id, container_item_id, 1 FROM configuration_versions
          WHERE container_item_id IS NOT NULL AND ${among(sql`id`, ids)})
      GROUP BY version_id, item_id HAVING sum(pieces) > 0 ORDER BY item_id`),
    ({ version_id }) => version_id,
  );
  return versions.map((version) => ({
    kind: 'configuration',
    ...version,
    parts: (parts.get(version.id) ?? []).map(({ item_id, count }) => ({ itemId: item_id, count })),
  }));
}
