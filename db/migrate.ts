import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { assertDurable } from './client';

/**
 * Brings the file at `path` to the newest schema, creating it when there is none. Migrations are
 * hand-written SQL, applied in order of name and never edited once released: each is recorded with
 * its hash, and a record that no longer matches is refused, as is a database newer than this program.
 *
 * `folder` is where the migrations are, `db/migrations` of the working folder unless told.
 */
export function migrate(
  path: string,
  folder = join(process.cwd(), 'db', 'migrations'),
): { applied: string[] } {
  const connection = new Sqlite(path);
  try {
    assertDurable(connection);
    // Rebuilding a table would cascade-delete its children; only outside a transaction can this be off.
    connection.pragma('foreign_keys = OFF');
    connection.exec('BEGIN EXCLUSIVE');
    try {
      const applied = applyMissing(connection, folder);
      // reading every row of a large database takes minutes: only where something changed
      const broken = applied.length === 0 ? [] : (connection.pragma('foreign_key_check') as unknown[]);
      if (broken.length > 0)
        throw new Error(`the migration leaves ${broken.length} rows that point at nothing`);
      connection.exec('COMMIT');
      return { applied };
    } catch (error) {
      if (connection.inTransaction) connection.exec('ROLLBACK');
      throw error;
    }
  } finally {
    connection.close();
  }
}

/**
 * What the file at `path` says of its migrations, read only: those `recorded` in it, those `missing` from it, those `unknown`
 * here (it is newer than this program) and those whose text was `changed` since. A file that is no database of ours throws.
 */
export function migrationsOf(path: string, folder = join(process.cwd(), 'db', 'migrations')) {
  const connection = new Sqlite(path, { readonly: true, fileMustExist: true });
  try {
    const hashOf = new Map(
      readdirSync(folder)
        .filter((name) => name.endsWith('.sql'))
        .sort()
        .map((name) => [name, hashOfText(readFileSync(join(folder, name), 'utf8'))]),
    );
    const rows = connection.prepare('SELECT name, hash FROM migrations ORDER BY name').all() as {
      name: string;
      hash: string;
    }[];
    const recorded = rows.map(({ name }) => name);
    return {
      recorded,
      missing: [...hashOf.keys()].filter((name) => !recorded.includes(name)),
      unknown: recorded.filter((name) => !hashOf.has(name)),
      changed: rows
        .filter(({ name, hash }) => hashOf.has(name) && hashOf.get(name) !== hash)
        .map(({ name }) => name),
    };
  } finally {
    connection.close();
  }
}

const hashOfText = (text: string) => createHash('sha256').update(text).digest('hex');

function applyMissing(connection: Sqlite.Database, folder: string): string[] {
  connection.exec(
    'CREATE TABLE IF NOT EXISTS migrations (name TEXT PRIMARY KEY, hash TEXT NOT NULL) STRICT, WITHOUT ROWID',
  );
  const recorded = new Map(
    (connection.prepare('SELECT name, hash FROM migrations').all() as { name: string; hash: string }[]).map(
      (row) => [row.name, row.hash],
    ),
  );
  const names = readdirSync(folder)
    .filter((name) => name.endsWith('.sql'))
    .sort();
  for (const name of recorded.keys()) {
    if (!names.includes(name)) throw new Error(`the database is newer than this program: it has ${name}`);
  }
  const applied: string[] = [];
  for (const name of names) {
    const text = readFileSync(join(folder, name), 'utf8');
    const hash = hashOfText(text);
    const before = recorded.get(name);
    if (before === hash) continue;
    if (before !== undefined) throw new Error(`the migration ${name} was changed after it was applied`);
    connection.exec(text);
    connection.prepare('INSERT INTO migrations (name, hash) VALUES (?, ?)').run(name, hash);
    applied.push(name);
  }
  return applied;
}
