import { createHash } from 'node:crypto';
import Sqlite from 'better-sqlite3';

/** Rows of every table of a database, as a digest of each in order; tables that a search index keeps for itself are left out. */
export function digestsOf(connection: Sqlite.Database): Map<string, string> {
  const tables = connection.pragma('table_list') as { schema: string; name: string; type: string }[];
  const names = tables
    .filter(({ schema, type, name }) => schema === 'main' && type === 'table' && name !== 'sqlite_schema')
    .map(({ name }) => name)
    .sort();
  return new Map(names.map((name) => [name, digestOf(connection, name)]));
}

function digestOf(connection: Sqlite.Database, name: string): string {
  const hash = createHash('sha256');
  // by no index: one that is damaged must not stand for the rows
  const rows = connection.prepare(`SELECT * FROM "${name}" NOT INDEXED`).raw().iterate() as Iterable<
    unknown[]
  >;
  for (const row of rows) hash.update(JSON.stringify(row));
  return hash.digest('hex');
}

/** The schema as its statements, sorted. */
export const schemaOf = (connection: Sqlite.Database): string[] =>
  (
    connection
      .prepare('SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY type, name')
      .raw()
      .all() as unknown[][]
  ).map((row) => JSON.stringify(row));

/** Opens a database as it was left, so that what lies in its log is taken in, and reads it. */
export function reading<T>(path: string, read: (connection: Sqlite.Database) => T): T {
  const connection = new Sqlite(path, { fileMustExist: true });
  try {
    return read(connection);
  } finally {
    connection.close();
  }
}
