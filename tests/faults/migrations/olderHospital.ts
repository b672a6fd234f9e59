import { copyFileSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { sha256 } from '@/db/ledger';
import { migrate } from '@/db/migrate';
import { hashInput, LEDGER_START } from '@/lib/ledger/chain';
import { ROOT } from '../../../scripts/bootstrap/places.mjs';

const FOLDER = join(ROOT, 'db', 'migrations');

/** The released migrations in their order. */
export const released = (): string[] =>
  readdirSync(FOLDER)
    .filter((name) => name.endsWith('.sql'))
    .sort();

/** How many entries a ledger of the first form gets, that its seal closes later. */
const ENTRIES = 40;

/**
 * Makes a database of an earlier release: the first `count` migrations, and of the demo hospital every row that their tables
 * can hold. A row keeps the columns that both have; one that lacks what was required then, or points at what is not there, is
 * left out. Answers how many rows there are in how many tables.
 */
export function olderHospital(
  path: string,
  count: number,
  { demo, scratch }: { demo: string; scratch: string },
): { rows: number; tables: number } {
  const folder = join(scratch, 'migrations');
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder);
  for (const name of released().slice(0, count)) copyFileSync(join(FOLDER, name), join(folder, name));
  migrate(path, folder);
  const connection = new Sqlite(path);
  try {
    return fill(connection, demo);
  } finally {
    connection.pragma('wal_checkpoint(TRUNCATE)');
    connection.close();
  }
}

function fill(connection: Sqlite.Database, demo: string): { rows: number; tables: number } {
  connection.pragma('foreign_keys = OFF');
  connection.prepare('ATTACH ? AS demo').run(demo);
  const columns = (schema: string, table: string) =>
    (connection.pragma(`${schema}.table_info("${table}")`) as { name: string }[]).map(({ name }) => name);
  const tables = (connection.pragma('table_list') as { schema: string; name: string; type: string }[]).filter(
    ({ schema, name, type }) => schema === 'main' && type === 'table' && !/^(sqlite_|migrations$)/.test(name),
  );
  const triggers = connection
    .prepare("SELECT name, sql FROM main.sqlite_master WHERE type = 'trigger'")
    .all() as { name: string; sql: string }[];
  connection.exec('BEGIN');
  // rules of how a row may change say nothing of how it came to be what it is
  for (const { name } of triggers) connection.exec(`DROP TRIGGER main."${name}"`);
  for (const { name } of tables) {
    const both = columns('main', name).filter((one) => columns('demo', name).includes(one));
    // what a migration itself put there, such as the legal steps, is that release's
    if (both.length === 0 || isOlderLedger(connection, name) || holdsRows(connection, name)) continue;
    const list = both.map((one) => `"${one}"`).join(', ');
    connection.exec(`INSERT OR IGNORE INTO main."${name}" (${list}) SELECT ${list} FROM demo."${name}"`);
  }
  if (tables.some(({ name }) => isOlderLedger(connection, name))) firstLedger(connection);
  dropDangling(connection);
  if (isThere(connection, 'items_search'))
    connection.exec("INSERT INTO items_search (items_search) VALUES ('rebuild')");
  for (const { sql } of triggers) connection.exec(sql);
  connection.exec('COMMIT');
  connection.exec('DETACH demo');
  const counts = tables.map(
    ({ name }) => connection.prepare(`SELECT count(*) FROM "${name}"`).pluck().get() as number,
  );
  return {
    rows: counts.reduce((sum, one) => sum + one, 0),
    tables: counts.filter((one) => one > 0).length,
  };
}

const isThere = (connection: Sqlite.Database, name: string) =>
  connection.prepare('SELECT 1 FROM main.sqlite_master WHERE name = ?').get(name) !== undefined;

const holdsRows = (connection: Sqlite.Database, name: string): boolean =>
  connection.prepare(`SELECT 1 FROM main."${name}" LIMIT 1`).get() !== undefined;

/** The ledger of the first release has no column for the form of an entry. */
const isOlderLedger = (connection: Sqlite.Database, name: string): boolean =>
  name === 'ledger' &&
  !(connection.pragma('main.table_info(ledger)') as { name: string }[]).some((one) => one.name === 'form');

/** A ledger as the first release wrote it. */
function firstLedger(connection: Sqlite.Database): void {
  const put = connection.prepare(
    `INSERT INTO ledger (seq, done_at, entered_at, person_id, action, subject_kind, subject_id, detail, previous_hash, hash)
     VALUES (?, ?, ?, NULL, 'load-demo', 'hospital', 'demo', ?, ?, ?)`,
  );
  let previousHash = LEDGER_START;
  for (let seq = 1; seq <= ENTRIES; seq += 1) {
    const at = new Date(Date.UTC(2026, 0, 1, 0, seq)).toISOString();
    const detailText = JSON.stringify({ number: seq });
    const said = { seq, form: 1, doneAt: at, enteredAt: at, personId: null, action: 'load-demo' };
    const row = { ...said, subjectKind: 'hospital', subjectId: 'demo', detailText, previousHash };
    const hash = sha256(hashInput(row) ?? '');
    put.run(seq, at, at, detailText, previousHash, hash);
    previousHash = hash;
  }
}

/** Rows that point at a row that was left out are left out too, until none does. */
function dropDangling(connection: Sqlite.Database): void {
  for (;;) {
    const dangling = connection.pragma('main.foreign_key_check') as {
      table: string;
      rowid: number | null;
      fkid: number;
    }[];
    if (dangling.length === 0) return;
    for (const table of new Set(dangling.map((one) => one.table))) {
      const rowids = dangling.flatMap((one) =>
        one.table === table && one.rowid !== null ? [one.rowid] : [],
      );
      // a table without row ids is emptied: which of its rows it was is not told
      if (rowids.length === 0) connection.exec(`DELETE FROM main."${table}"`);
      const drop = connection.prepare(`DELETE FROM main."${table}" WHERE rowid = ?`);
      for (const rowid of rowids) drop.run(rowid);
    }
  }
}
