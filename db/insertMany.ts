import { getTableColumns, getTableName, sql } from 'drizzle-orm';
import type { SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { Queries } from './client';

/**
 * Inserts any number of rows in one statement inside the caller's transaction: the database reads them out of one JSON text,
 * which is many times faster than binding a value a cell. A column no row names keeps its default; a value a row leaves out
 * is NULL. For what is loaded in bulk; everything else goes through the query builder.
 */
export async function insertMany<T extends SQLiteTable>(
  write: Queries,
  table: T,
  rows: readonly T['$inferInsert'][],
): Promise<void> {
  if (rows.length === 0) return;
  const named = new Set(rows.flatMap((row) => Object.keys(row)));
  const columns = Object.entries(getTableColumns(table)).filter(
    ([key, { generated }]) => named.has(key) && generated === undefined,
  );
  const cells = rows.map((row) =>
    columns.map(([key, column]) => {
      const value = (row as Record<string, unknown>)[key];
      return value === undefined || value === null ? null : column.mapToDriverValue(value);
    }),
  );
  const names = columns.map(([, { name }]) => `"${name}"`).join(', ');
  const read = columns.map((_, at) => `value ->> ${at}`).join(', ');
  const head = `INSERT INTO "${getTableName(table)}" (${names}) SELECT ${read} FROM json_each(`;
  await write.run(sql`${sql.raw(head)}${JSON.stringify(cells)})`);
}
