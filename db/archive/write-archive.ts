import { createHash } from 'node:crypto';
import { closeSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import Sqlite from 'better-sqlite3';
import { strToU8, Zip, ZipDeflate } from 'fflate';
import {
  type ArchiveManifest,
  type ArchiveValue,
  archiveLine,
  MANIFEST_FILE,
  tableFile,
} from '@/lib/exchange/archive';
import { archivedTables, ledgerHeadOf, quoted } from './tables';

/** The format of zip that is written has no place for more. */
const MOST_BYTES = 4_000_000_000;
const LINES_TOGETHER = 500;

/**
 * Writes everything the database holds, as it is at one moment, into a zip: a file of JSON lines for each table and a
 * manifest with the digest of each, the schema and the head of the ledger. Only reads; the server may run. The file appears
 * when it is whole, and holds what the database holds: names, and digests of secrets. Keep it as a backup is kept.
 */
export function writeArchive({
  database,
  to,
  madeAt,
}: {
  database: string;
  to: string;
  madeAt: string;
}): ArchiveManifest {
  const connection = new Sqlite(database, { readonly: true, fileMustExist: true });
  const unfinished = `${to}.unfinished`;
  const out = openSync(unfinished, 'w', 0o600);
  let written = 0;
  const zip = new Zip((error, part) => {
    if (error) throw error;
    written += part.byteLength;
    if (written > MOST_BYTES) throw new RangeError('the hospital is too large for one archive of 4 GB');
    writeSync(out, part);
  });
  const add = (name: string) => {
    const file = new ZipDeflate(name, { level: 6 });
    // the same hospital makes the same bytes, whenever and wherever it is packed
    file.mtime = new Date(1980, 0, 2);
    zip.add(file);
    return file;
  };
  try {
    connection.exec('BEGIN');
    const tables = archivedTables(connection).map(({ name, columns, order }) => {
      const file = add(tableFile(name));
      const hash = createHash('sha256');
      const rows = connection
        .prepare(`SELECT ${columns.map(quoted).join(', ')} FROM ${quoted(name)} ORDER BY ${order}`)
        .raw();
      let count = 0;
      let lines = '';
      const flush = (last: boolean) => {
        const bytes = strToU8(lines);
        hash.update(bytes);
        file.push(bytes, last);
        lines = '';
      };
      for (const values of rows.iterate() as IterableIterator<ArchiveValue[]>) {
        lines += archiveLine(values);
        count += 1;
        if (count % LINES_TOGETHER === 0) flush(false);
      }
      flush(true);
      return { name, columns, rows: count, sha256: hash.digest('hex') };
    });
    const schema = connection
      .prepare('SELECT name, hash FROM migrations ORDER BY name')
      .all() as ArchiveManifest['schema'];
    const manifest: ArchiveManifest = {
      form: 'hospital-archive-1',
      madeAt,
      schema,
      ledgerHead: ledgerHeadOf(connection),
      tables,
    };
    add(MANIFEST_FILE).push(strToU8(JSON.stringify(manifest, null, 1)), true);
    zip.end();
    closeSync(out);
    renameSync(unfinished, to);
    return manifest;
  } catch (error) {
    rmSync(unfinished, { force: true });
    throw error;
  } finally {
    connection.close();
  }
}
