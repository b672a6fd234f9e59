import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { eq } from 'drizzle-orm';
import { expect, inject, onTestFinished, test } from 'vitest';
import { backupsIn } from '@/db/backup/read';
import { type Database, openDatabase } from '@/db/client';
import { migrationsOf } from '@/db/migrate';
import { fitRules, people, settings } from '@/db/schema';
import { run } from '@/scripts/bootstrap/command.mjs';
import { runOnDatabase } from '@/scripts/bootstrap/prepare.mjs';
import { isDemo, isEmpty } from '@/seed/load';
import { emptyDatabaseFile } from '../setup/database';

function open(path: string): Database {
  const db = openDatabase(path);
  onTestFinished(() => db.close());
  return db;
}

async function makeHospitalsOwn(db: Database): Promise<void> {
  await db.tx(async (write) => {
    await write.insert(settings).values({ key: 'hospital', value: { name: 'Another hospital' } });
  });
}

test('a database that is not there is made whole, with the demo in it, and left alone the second time', async () => {
  const database = join(inject('databaseFolder'), `new-${process.pid}.sqlite`);
  expect(await runOnDatabase('prepare-database.ts', { database })).toBe('demo hospital, loaded now');
  expect(existsSync(`${database}.unfinished`)).toBe(false);
  const db = open(database);
  expect(await isDemo(db)).toBe(true);
  await db.tx(async (write) => {
    await write.insert(settings).values({ key: 'changed-by-hand', value: true });
  });
  expect(await runOnDatabase('prepare-database.ts', { database })).toBe('demo hospital');
  expect(await db.read.select().from(settings).where(eq(settings.key, 'changed-by-hand'))).toHaveLength(1);
});

test("a hospital's own data is never touched", async () => {
  const database = emptyDatabaseFile();
  const db = open(database);
  await makeHospitalsOwn(db);
  const hospital = () => db.read.select().from(settings).where(eq(settings.key, 'hospital'));
  const before = await hospital();
  expect(before).toMatchObject([{ key: 'hospital', value: { name: 'Another hospital' } }]);
  expect(await runOnDatabase('prepare-database.ts', { database })).toMatch(
    /^hospital data\nfirst administrator: ([2-9A-HJ-NP-Z]{4}-){2}[2-9A-HJ-NP-Z]{4}$/,
  );
  await expect(runOnDatabase('reset-demo.ts', { database })).rejects.toThrow(
    /^The database .* holds a hospital's own data, not the demo, so it is not reset/,
  );
  expect(await hospital()).toEqual(before);
  expect(await isEmpty(db)).toBe(false);
});

test('there is nothing to reset where no database is', async () => {
  const database = join(inject('databaseFolder'), 'none.sqlite');
  await expect(runOnDatabase('reset-demo.ts', { database })).rejects.toThrow(/^There is no database/);
  expect(existsSync(database)).toBe(false);
});

test('a file that is no database is named in one sentence', async () => {
  const database = join(inject('databaseFolder'), `text-${process.pid}.sqlite`);
  writeFileSync(database, 'this is a letter, not a database\n'.repeat(100));
  await expect(runOnDatabase('prepare-database.ts', { database })).rejects.toThrow(
    `${database} is not a database`,
  );
});

test('a hospital that wants no demo begins with the starter rules, and a code for its first administrator', async () => {
  const database = join(inject('databaseFolder'), `own-${process.pid}.sqlite`);
  const { output } = await run(process.execPath, ['--import', 'tsx', 'scripts/prepare-database.ts'], {
    env: { KITWRIGHT_DB: database, KITWRIGHT_DEMO: 'no' },
  });
  expect(output).toMatch(/^a new hospital without a catalogue\nfirst administrator: \S{14}$/);
  const db = open(database);
  expect(await isDemo(db)).toBe(false);
  expect(await db.read.select().from(people)).toEqual([]);
  expect((await db.read.select().from(fitRules)).length).toBeGreaterThan(10);
});

test('before a database is brought up to date, a proven backup of it is made; without one nothing is changed', async () => {
  const database = emptyDatabaseFile();
  const older = new Sqlite(database);
  const [newest] = older.prepare('SELECT name FROM migrations ORDER BY name DESC LIMIT 1').pluck().all();
  older.prepare('DELETE FROM migrations WHERE name = ?').run(newest);
  older.pragma('foreign_keys = OFF');
  older.prepare('UPDATE ledger_heads SET seq = seq').run();
  older.close();
  const folder = `${database}-backups`;
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const prepare = (env: Record<string, string>) =>
    run(process.execPath, ['--import', 'tsx', 'scripts/prepare-database.ts'], {
      env: { KITWRIGHT_DB: database, KITWRIGHT_DEMO: 'no', ...env },
    });
  // a file where the folder should be: no backup can be made, and the schema stays what it was
  writeFileSync(folder, 'in the way');
  const refused = await prepare({ KITWRIGHT_BACKUPS: folder });
  expect(refused.ok).toBe(false);
  expect(migrationsOf(database).missing).toEqual([newest]);
  rmSync(folder);
  await prepare({ KITWRIGHT_BACKUPS: folder });
  const [kept] = backupsIn(folder);
  expect(kept).toMatchObject({ reason: 'beforeMigration', proof: { faults: [] } });
  expect(migrationsOf(join(folder, kept?.file ?? '')).missing).toEqual([newest]);
});

test('a variable that cannot be meant stops it before anything is made', async () => {
  const database = join(inject('databaseFolder'), `never-${process.pid}.sqlite`);
  const { ok, output } = await run(process.execPath, ['--import', 'tsx', 'scripts/prepare-database.ts'], {
    env: { KITWRIGHT_DB: database, KITWRIGHT_DEMO: 'maybe', KITWRIGHT_HEAD: 'x' },
  });
  expect(ok).toBe(false);
  expect(output).toContain('KITWRIGHT_DEMO cannot be used as it is: use yes or no.');
  expect(output).toContain('KITWRIGHT_HEAD is read by nothing: perhaps KITWRIGHT_HEADS is meant.');
  expect(existsSync(database)).toBe(false);
});
