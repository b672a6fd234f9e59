import { and, type SQL, sql } from 'drizzle-orm';
import type { SQLiteColumn, SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { Queries } from '../../client';

/** Which page of a list is read: what follows `after`, the first page where it is `null`; at most `limit`. */
export interface PlaceInList {
  after: string | null;
  limit: number;
}

/**
 * Ids of a table that only grows, what was recorded last first. Rows are numbered by the store as they come, so a page costs the
 * same however long the table is. `undefined`: what it should go on after is no longer there.
 */
export async function idsAfter(
  read: Queries,
  { table, id, where }: { table: SQLiteTable; id: SQLiteColumn; where?: SQL | undefined },
  { after, limit }: PlaceInList,
): Promise<string[] | undefined> {
  const from = after === null ? undefined : await rowOf(read, { table, id }, after);
  if (from === null) return undefined;
  const rows = await read
    .select({ id: sql<string>`${id}` })
    .from(table)
    .where(and(from === undefined ? undefined : sql`${table}.rowid < ${from}`, where))
    .orderBy(sql`${table}.rowid DESC`)
    .limit(limit);
  return rows.map((row) => row.id);
}

async function rowOf(
  read: Queries,
  { table, id }: { table: SQLiteTable; id: SQLiteColumn },
  value: string,
): Promise<number | null> {
  const [row] = await read
    .select({ at: sql<number>`${table}.rowid` })
    .from(table)
    .where(sql`${id} = ${value}`);
  return row?.at ?? null;
}

/** Rows in the order of the ids they were read by. */
export function inOrderOf<T extends { id: string }>(ids: readonly string[], rows: readonly T[]): T[] {
  const byId = new Map(rows.map((row) => [row.id, row]));
  return ids.flatMap((id) => byId.get(id) ?? []);
}
