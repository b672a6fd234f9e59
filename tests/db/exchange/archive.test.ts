import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { sql } from 'drizzle-orm';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, inject, it, onTestFinished } from 'vitest';
import { loadArchive } from '@/db/archive/load-archive';
import { archivedTables, quoted } from '@/db/archive/tables';
import { writeArchive } from '@/db/archive/write-archive';
import { openDatabase } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { archiveManifest } from '@/lib/exchange/archive';
import { demoDatabaseFile, emptyDatabaseFile } from '../../setup/database';
import { NOW } from './desk';

let made = 0;
function place(ends: string): string {
  made += 1;
  const path = join(inject('databaseFolder'), `archive-${process.pid}-${made}.${ends}`);
  onTestFinished(() => {
    for (const end of ['', '-wal', '-shm', '.unfinished', '.loading']) rmSync(path + end, { force: true });
  });
  return path;
}

/** Every row of every table, and every index, trigger and view. */
function everythingIn(path: string) {
  const connection = new Sqlite(path, { readonly: true });
  try {
    const rows = archivedTables(connection).map(({ name, order }) => [
      name,
      connection.prepare(`SELECT * FROM ${quoted(name)} ORDER BY ${order}`).all(),
    ]);
    const made = connection
      .prepare("SELECT type, name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' ORDER BY type, name")
      .all();
    return { rows: Object.fromEntries(rows), made };
  } finally {
    connection.close();
  }
}

it('a hospital taken along and loaded where nothing is, is the same: every row, every guard, the head of the ledger', async () => {
  const database = await demoDatabaseFile();
  const [to, other] = [place('zip'), place('sqlite')];
  const manifest = writeArchive({ database, to, madeAt: NOW });
  expect(manifest.tables.find(({ name }) => name === 'items')?.rows).toBeGreaterThan(100);
  expect(loadArchive({ archive: to, database: other })).toMatchObject({
    ok: true,
    manifest: { ledgerHead: manifest.ledgerHead },
  });
  expect(everythingIn(other)).toEqual(everythingIn(database));
  const again = place('zip');
  writeArchive({ database: other, to: again, madeAt: NOW });
  expect(readFileSync(again).equals(readFileSync(to))).toBe(true);
  const db = openDatabase(other);
  onTestFinished(() => db.close());
  expect(await findLedgerBreak(db.read)).toBeNull();
  // searching is made anew, not taken along
  const found = await db.read.all(sql`SELECT rowid FROM items_search WHERE items_search MATCH 'screw'`);
  expect(found.length).toBeGreaterThan(10);
});

describe('an archive is refused', () => {
  const small = () => {
    const to = place('zip');
    writeArchive({ database: emptyDatabaseFile(), to, madeAt: NOW });
    return { to, files: unzipSync(readFileSync(to)) };
  };
  const refusal = (files: Record<string, Uint8Array>) => {
    const [archive, database] = [place('zip'), place('sqlite')];
    writeFileSync(archive, zipSync(files));
    const loaded = loadArchive({ archive, database });
    expect(existsSync(database)).toBe(false);
    expect(existsSync(`${database}.loading`)).toBe(false);
    return loaded.ok ? '' : loaded.sentences.join(' ');
  };
  const manifestWith = (
    files: Record<string, Uint8Array>,
    change: (manifest: ReturnType<typeof archiveManifest.parse>) => void,
  ) => {
    const manifest = archiveManifest.parse(JSON.parse(strFromU8(files['manifest.json'] ?? new Uint8Array())));
    change(manifest);
    return { ...files, 'manifest.json': strToU8(JSON.stringify(manifest)) };
  };

  it('where something is already', () => {
    const { to } = small();
    const loaded = loadArchive({ archive: to, database: emptyDatabaseFile() });
    expect(loaded).toMatchObject({ ok: false, sentences: [expect.stringContaining('already')] });
  });

  it('as it comes it is not', () => {
    const [archive, database] = [place('zip'), place('sqlite')];
    writeFileSync(archive, zipSync(small().files));
    expect(loadArchive({ archive, database }).ok).toBe(true);
  });

  it('with a row changed, a file too few or too many, another schema, another head', () => {
    const { files } = small();
    const steps = strFromU8(files['tables/legal_steps.jsonl'] ?? new Uint8Array());
    expect(
      refusal({ ...files, 'tables/legal_steps.jsonl': strToU8(steps.replace('washing', 'inTheatre')) }),
    ).toContain('legal_steps');
    const { 'tables/makers.jsonl': _gone, ...fewer } = files;
    expect(refusal(fewer)).toContain('lacks tables/makers.jsonl');
    expect(refusal({ ...files, 'tables/more.jsonl': strToU8('') })).toContain('does not name');
    expect(
      refusal(
        manifestWith(files, ({ schema }) => schema.push({ name: '9999-later.sql', hash: '0'.repeat(64) })),
      ),
    ).toContain('newer program');
    expect(refusal(manifestWith(files, ({ schema }) => schema.pop()))).toContain('older program');
    expect(
      refusal(
        manifestWith(files, (manifest) =>
          Object.assign(manifest, { ledgerHead: { seq: 1, hash: '0'.repeat(64) } }),
        ),
      ),
    ).toContain('head');
    expect(refusal({ ...files, 'manifest.json': strToU8('{') })).toContain('manifest');
    const { 'manifest.json': _manifest, ...without } = files;
    expect(refusal(without)).toContain('no manifest');
  });

  it('with any byte of it changed, or cut off, and never throws', () => {
    const bytes = readFileSync(small().to);
    for (let at = 0; at < bytes.length; at += Math.max(1, Math.floor(bytes.length / 60))) {
      const [archive, database] = [place('zip'), place('sqlite')];
      const changed = Buffer.from(bytes);
      changed[at] = (changed[at] ?? 0) ^ 0xff;
      writeFileSync(archive, at % 2 === 0 ? changed : bytes.subarray(0, at));
      const loaded = loadArchive({ archive, database });
      // a byte of no meaning, such as a time, may be any; then it is the same hospital
      if (loaded.ok) expect(loaded.manifest.tables.length).toBeGreaterThan(50);
      else expect(existsSync(database)).toBe(false);
      rmSync(database, { force: true });
    }
  });
});
