import Sqlite from 'better-sqlite3';
import { newestHeadOf } from './prove';

/** Rows of a table that nothing ever changes, and that a database no longer has as its backup has them. */
export interface RowsAltered {
  table: string;
  rows: number;
}

/** Whose every row the chain of the ledger rests on: that check is stricter. */
const CHAINED = new Set(['ledger', 'ledger_things']);
const NEVER_CHANGED = /BEFORE UPDATE ON "?(\w+)"?\s+(?:FOR EACH ROW\s+)?BEGIN\s+SELECT\s+raise\(ABORT/i;

/**
 * Compares what is written once and for all with an open backup of the same hospital: what a disk altered by itself shows, as
 * far as it was there when the backup was made. Only reads. `null` where the backup is not of this ledger’s past, so that
 * nothing follows from it.
 */
export function rowsAltered(database: string, backup: string): RowsAltered[] | null {
  const { head } = newestHeadOf(backup);
  const connection = new Sqlite(database, { readonly: true, fileMustExist: true });
  try {
    const here = connection.prepare('SELECT hash FROM ledger WHERE seq = ?').pluck();
    if (head === null || here.get(head.seq) !== head.hash) return null;
    connection.prepare('ATTACH ? AS kept').run(backup);
    return neverChanged(connection).flatMap((table) => {
      const rows = alteredIn(connection, table);
      return rows === 0 ? [] : [{ table, rows }];
    });
  } finally {
    connection.close();
  }
}

/** Tables of both files whose rows no statement can change: a trigger without a condition stands before it. */
function neverChanged(connection: Sqlite.Database): string[] {
  const triggers = connection
    .prepare("SELECT sql FROM kept.sqlite_schema WHERE type = 'trigger'")
    .pluck()
    .all() as string[];
  const tables = triggers.flatMap((sql) => NEVER_CHANGED.exec(sql)?.[1] ?? []);
  return [...new Set(tables)].filter((table) => !CHAINED.has(table)).sort();
}

function alteredIn(connection: Sqlite.Database, table: string): number {
  const columnsOf = (file: string) =>
    connection.prepare('SELECT name, pk FROM pragma_table_info(?, ?) ORDER BY cid').all(table, file) as {
      name: string;
      pk: number;
    }[];
  const here = new Set(columnsOf('main').map(({ name }) => name));
  // a column that came or went since says nothing of the rest
  const shared = columnsOf('kept').filter(({ name }) => here.has(name));
  const same = (columns: readonly { name: string }[]) =>
    columns.map(({ name }) => `here."${name}" IS there."${name}"`).join(' AND ');
  const keys = shared.filter(({ pk }) => pk > 0);
  if (keys.length === 0) return 0;
  return connection
    .prepare(
      `SELECT count(*) FROM kept."${table}" AS there
       WHERE NOT EXISTS (SELECT 1 FROM main."${table}" AS here WHERE ${same(keys)} AND ${same(shared)})`,
    )
    .pluck()
    .get() as number;
}
