import Sqlite from 'better-sqlite3';
import { type BetterSQLite3Database, drizzle } from 'drizzle-orm/better-sqlite3';
import { type Reader, THE_PROGRAM } from './reader';
import * as schema from './schema';
import { type Transact, writeQueue } from './tx';

/** A query builder over one connection. Outside `db/` it is only ever handed to queries and operations. */
export type Queries = BetterSQLite3Database<typeof schema>;

/** The store of one hospital: reads that cannot write, and one way to write. */
export interface Database {
  read: Queries;
  /** For whom is read: the program itself, until `readAs` names a person. */
  reader: Reader;
  tx: Transact;
  close(): void;
}

/**
 * Opens the database file at `path`. It must have been migrated.
 *
 * Two connections: one for reading that refuses to write, and one writer behind the queue of `tx`.
 * Throws when the file cannot be opened or a pragma that durability rests on does not hold.
 */
export function openDatabase(path: string): Database {
  const writer = new Sqlite(path);
  assertDurable(writer);
  const reader = new Sqlite(path);
  assertDurable(reader);
  reader.pragma('query_only = ON');
  return {
    read: drizzle(reader, { schema }),
    reader: THE_PROGRAM,
    tx: writeQueue(writer, drizzle(writer, { schema })),
    close() {
      reader.close();
      writer.close();
    },
  };
}

/** The same store, read for one person: its queries ask what that person may see. */
export function readAs(db: Database, reader: Reader): Database {
  return { ...db, reader };
}

/**
 * Sets and then checks what the promise "what was acknowledged is there" rests on: WAL with
 * `synchronous=FULL` (NORMAL, the default here, loses acknowledged writes at a power cut), foreign
 * keys, and recursive triggers, without which INSERT OR REPLACE would slip past the ledger's triggers.
 */
export function assertDurable(connection: Sqlite.Database): void {
  connection.pragma('journal_mode = WAL');
  connection.pragma('synchronous = FULL');
  connection.pragma('foreign_keys = ON');
  connection.pragma('recursive_triggers = ON');
  connection.pragma('busy_timeout = 5000');
  const expected = { journal_mode: 'wal', synchronous: 2, foreign_keys: 1, recursive_triggers: 1 };
  for (const [name, value] of Object.entries(expected)) {
    const actual = connection.pragma(name, { simple: true });
    if (actual !== value)
      throw new Error(`the database has ${name} = ${String(actual)}, and ${value} is needed`);
  }
}
