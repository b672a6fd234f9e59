import { createHash } from 'node:crypto';
import { existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { StringDecoder } from 'node:string_decoder';
import Sqlite from 'better-sqlite3';
import {
  type ArchiveManifest,
  archiveManifest,
  archiveMisfits,
  MANIFEST_FILE,
  readArchiveLine,
  tableFile,
} from '@/lib/exchange/archive';
import { chainChecker } from '@/lib/ledger/checkChain';
import { sha256 } from '../ledger';
import { openLedgerFile } from '../ledgerFile';
import { migrate } from '../migrate';
import { archivedTables, ledgerHeadOf, programSchema, quoted, searchTables } from './tables';
import { openZip, type ZipFile } from './zip-file';

export type ArchiveLoaded = { ok: true; manifest: ArchiveManifest } | { ok: false; sentences: string[] };

const no = (...sentences: string[]): ArchiveLoaded => ({ ok: false, sentences });
const MOST_MANIFEST_BYTES = 5_000_000;

/** Something in the archive is not as its manifest says. */
class NotAsSaid extends Error {}

/**
 * Loads an archive into a database that is not there yet. It is checked whole first: the schema is this program's own, the
 * files are those of the manifest, each with its digest. It is loaded into a file beside, which takes its place only when its
 * keys point at what is there, its ledger is one chain, and that ends with the head the archive was made with.
 */
export function loadArchive({
  archive,
  database,
  folder = join(process.cwd(), 'db', 'migrations'),
}: {
  archive: string;
  database: string;
  folder?: string;
}): ArchiveLoaded {
  if (existsSync(database))
    return no(`There is a database at ${database} already: an archive is loaded where nothing is.`);
  if (!existsSync(archive)) return no(`There is no file ${archive}.`);
  const zip = openZip(archive);
  if (zip === null) return no('The file is no archive: its directory can’t be read.');
  const loading = `${database}.loading`;
  try {
    const manifest = manifestOf(zip);
    const misfits = archiveMisfits(manifest, zip.names, programSchema(folder));
    if (misfits.length > 0) return no(...misfits);
    const wrong = manifest.tables.filter((table) => digestOf(zip, tableFile(table.name)) !== table.sha256);
    if (wrong.length > 0)
      return no(
        `Not as they were packed: ${wrong.map(({ name }) => name).join(', ')}. The archive was damaged or changed.`,
      );
    remove(loading);
    migrate(loading, folder);
    fill(loading, zip, manifest);
    renameSync(loading, database);
    return { ok: true, manifest };
  } catch (error) {
    if (error instanceof NotAsSaid) return no(error.message);
    // what the packing itself makes of bytes that were changed
    return no(`The archive can’t be loaded: ${error instanceof Error ? error.message : String(error)}.`);
  } finally {
    zip.close();
    remove(loading);
  }
}

const remove = (path: string) => {
  for (const end of ['', '-wal', '-shm']) rmSync(path + end, { force: true });
};

function manifestOf(zip: ZipFile): ArchiveManifest {
  if (!zip.names.includes(MANIFEST_FILE)) throw new NotAsSaid('It has no manifest.');
  let text = '';
  const decoder = new StringDecoder('utf8');
  for (const part of zip.lines(MANIFEST_FILE)) {
    text += decoder.write(Buffer.from(part));
    if (text.length > MOST_MANIFEST_BYTES) throw new NotAsSaid('Its manifest is too long to be one.');
  }
  let value: unknown = null;
  try {
    value = JSON.parse(text);
  } catch {
    // told below
  }
  const parsed = archiveManifest.safeParse(value);
  if (!parsed.success) throw new NotAsSaid('Its manifest can’t be read.');
  return parsed.data;
}

function digestOf(zip: ZipFile, name: string): string {
  const hash = createHash('sha256');
  for (const part of zip.lines(name)) hash.update(part);
  return hash.digest('hex');
}

function fill(path: string, zip: ZipFile, manifest: ArchiveManifest): void {
  const connection = new Sqlite(path);
  try {
    connection.pragma('journal_mode = DELETE');
    connection.pragma('synchronous = FULL');
    connection.pragma('foreign_keys = OFF');
    connection.exec('BEGIN EXCLUSIVE');
    const own = archivedTables(connection);
    const names = (tables: readonly { name: string }[]) => tables.map(({ name }) => name).join(' ');
    if (names(own) !== names(manifest.tables))
      throw new NotAsSaid('Its tables are not those of this program.');
    // what triggers write is in the archive already, and what they refuse was allowed once
    const triggers = connection
      .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
      .all() as {
      name: string;
      sql: string;
    }[];
    for (const { name } of triggers) connection.exec(`DROP TRIGGER ${quoted(name)}`);
    for (const [at, table] of manifest.tables.entries()) {
      if (own[at]?.columns.join(' ') !== table.columns.join(' '))
        throw new NotAsSaid(`Its table ${table.name} has other columns than this program’s.`);
      fillTable(connection, zip, table);
    }
    for (const { sql } of triggers) connection.exec(sql);
    for (const name of searchTables(connection))
      connection.exec(`INSERT INTO ${quoted(name)}(${quoted(name)}) VALUES ('rebuild')`);
    const broken = connection.pragma('foreign_key_check') as unknown[];
    if (broken.length > 0) throw new NotAsSaid(`${broken.length} of its rows point at nothing.`);
    const head = ledgerHeadOf(connection);
    if (JSON.stringify(head) !== JSON.stringify(manifest.ledgerHead))
      throw new NotAsSaid('Its ledger does not end with the head its manifest names.');
    connection.exec('COMMIT');
  } finally {
    connection.close();
  }
  const ledger = openLedgerFile(path);
  try {
    const check = chainChecker(sha256);
    for (const row of ledger.rows())
      if (check.take(row).length > 0)
        throw new NotAsSaid(`Its ledger does not hold together at entry ${row.seq}.`);
  } finally {
    ledger.close();
  }
}

function fillTable(
  connection: Sqlite.Database,
  zip: ZipFile,
  table: ArchiveManifest['tables'][number],
): void {
  const { name, columns } = table;
  connection.exec(`DELETE FROM ${quoted(name)}`);
  const insert = connection.prepare(
    `INSERT INTO ${quoted(name)} (${columns.map(quoted).join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
  );
  let count = 0;
  for (const line of linesOf(zip, tableFile(name))) {
    const values = readArchiveLine(line, columns.length);
    if (values === null) throw new NotAsSaid(`Line ${count + 1} of ${name} can’t be read.`);
    insert.run(values);
    count += 1;
  }
  if (count !== table.rows)
    throw new NotAsSaid(`${name} has ${count} rows, and its manifest says ${table.rows}.`);
}

function* linesOf(zip: ZipFile, name: string): Generator<string> {
  const decoder = new StringDecoder('utf8');
  let rest = '';
  for (const part of zip.lines(name)) {
    const lines = (rest + decoder.write(Buffer.from(part))).split('\n');
    rest = lines.pop() ?? '';
    yield* lines;
  }
  rest += decoder.end();
  if (rest !== '') yield rest;
}
