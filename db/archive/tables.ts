import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type Sqlite from 'better-sqlite3';
import type { ArchiveManifest } from '@/lib/exchange/archive';

/** A table as an archive has it: its stored columns, and the order of its rows. */
export interface ArchivedTable {
  name: string;
  columns: string[];
  order: string;
}

/**
 * Every table that holds what somebody entered. Left out are the list of migrations, which the manifest has, and what the
 * engine keeps for searching, which is made anew.
 */
export function archivedTables(connection: Sqlite.Database): ArchivedTable[] {
  const all = connection
    .prepare(
      "SELECT name, sql FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name",
    )
    .all() as { name: string; sql: string }[];
  const virtual = all.filter(({ sql }) => /^CREATE VIRTUAL/i.test(sql)).map(({ name }) => name);
  return all
    .filter(
      ({ name }) =>
        name !== 'migrations' && !virtual.some((one) => name === one || name.startsWith(`${one}_`)),
    )
    .map(({ name, sql }) => {
      const columns = connection.prepare(`SELECT name, pk, hidden FROM pragma_table_xinfo(?)`).all(name) as {
        name: string;
        pk: number;
        hidden: number;
      }[];
      const keys = columns.filter(({ pk }) => pk > 0).sort((a, b) => a.pk - b.pk);
      return {
        name,
        columns: columns.filter(({ hidden }) => hidden === 0).map((column) => column.name),
        order: /WITHOUT ROWID/i.test(sql) ? keys.map((key) => quoted(key.name)).join(', ') : 'rowid',
      };
    });
}

/** Indices for searching, to be made anew. */
export const searchTables = (connection: Sqlite.Database): string[] =>
  (
    connection
      .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'table' AND sql LIKE 'CREATE VIRTUAL%fts5%'")
      .all() as { name: string }[]
  ).map(({ name }) => name);

export const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/** The migrations of this program, each with the digest of its text. */
export function programSchema(folder: string): ArchiveManifest['schema'] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.sql'))
    .sort()
    .map((name) => ({
      name,
      hash: createHash('sha256')
        .update(readFileSync(join(folder, name), 'utf8'))
        .digest('hex'),
    }));
}

export function ledgerHeadOf(connection: Sqlite.Database): ArchiveManifest['ledgerHead'] {
  const head = connection.prepare('SELECT seq, hash FROM ledger ORDER BY seq DESC LIMIT 1').get();
  return (head as { seq: number; hash: string } | undefined) ?? null;
}
