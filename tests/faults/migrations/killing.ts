import { type ChildProcess, spawn } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type Sqlite from 'better-sqlite3';
import { migrate } from '@/db/migrate';
import { ROOT } from '../../../scripts/bootstrap/places.mjs';
import { digestsOf, reading, schemaOf } from '../standing';
import type { Standing } from './checker';

/** Where a kill fell, by what it left. */
export type Moment = 'before anything' | 'in the backup' | 'in the migration' | 'after it';

/** Removes a database with what lies beside it. */
export const clear = (path: string) => {
  for (const end of ['', '-wal', '-shm', '-journal']) rmSync(path + end, { force: true });
};

/** A copy in a folder of its own, with a place for its backups. */
export function place(folder: string, older: string): string {
  const here = join(folder, 'here');
  rmSync(here, { recursive: true, force: true });
  mkdirSync(here);
  const database = join(here, 'hospital.sqlite');
  copyFileSync(older, database);
  return database;
}

interface Started {
  child: ChildProcess;
  /** Rejected where it ends otherwise than well or by our kill. */
  ended: Promise<void>;
}

export function start(database: string): Started {
  const child = spawn(process.execPath, ['--import', 'tsx', 'scripts/prepare-database.ts'], {
    cwd: ROOT,
    env: { ...process.env, KITWRIGHT_DB: database, KITWRIGHT_BACKUPS: join(dirname(database), 'backups') },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let said = '';
  child.stderr?.on('data', (part) => {
    said += part;
  });
  const ended = new Promise<void>((resolve, reject) => {
    child.on('close', (code, signal) =>
      code === 0 || signal === 'SIGKILL'
        ? resolve()
        : reject(new Error(`bringing it up to date ended with ${code}: ${said.slice(-2000)}`)),
    );
  });
  return { child, ended };
}

/**
 * Once without a kill, to know where it comes and how long each part takes; rows are of the moment where migrating alone, in
 * this process, gives others.
 */
export async function bringUnharmed(folder: string, older: string) {
  const alone = place(folder, older);
  migrate(alone);
  const migrated = standing(alone);
  const database = place(folder, older);
  const began = performance.now();
  const { ended } = start(database);
  const whole = ended.then(() => performance.now());
  const backup = await seen(database, whole, isBackingUp);
  const migrating = await seen(database, whole, hasBackup);
  const end = await whole;
  const unharmed = standing(database);
  return {
    unharmed,
    ofTheMoment: new Set(
      [...unharmed.rows.keys()].filter((name) => unharmed.rows.get(name) !== migrated.rows.get(name)),
    ),
    parts: { any: end - began, backup: migrating - backup, migration: end - migrating },
  };
}

type Parts = Awaited<ReturnType<typeof bringUnharmed>>['parts'];

const filesOfBackups = (database: string) => {
  const folder = join(dirname(database), 'backups');
  return existsSync(folder) ? readdirSync(folder) : [];
};
const isBackingUp = (database: string) => filesOfBackups(database).length > 0;
const hasBackup = (database: string) =>
  filesOfBackups(database).some((name) => /^[^.].*\.sqlite$/.test(name));

/** When something is first seen of it, or it is over. */
async function seen(
  database: string,
  over: Promise<number>,
  what: (database: string) => boolean,
): Promise<number> {
  let end: number | null = null;
  void over.then((at) => {
    end = at;
  });
  while (end === null && !what(database)) await sleep(3);
  return end ?? performance.now();
}

/** One kill in five at any moment; the others, in turn, within the backup and within the migration. */
export async function killWithin(
  database: string,
  before: Standing,
  parts: Parts,
  { number, draw }: { number: number; draw: () => number },
): Promise<Moment> {
  const { child, ended } = start(database);
  const whole = ended.then(() => performance.now());
  if (number % 5 === 4) await Promise.race([sleep(draw() * parts.any), ended]);
  else {
    const isBackup = number % 2 === 0;
    await seen(database, whole, isBackup ? isBackingUp : hasBackup);
    await Promise.race([sleep(draw() * (isBackup ? parts.backup : parts.migration)), ended]);
  }
  child.kill('SIGKILL');
  await ended;
  if (!isBackingUp(database)) return 'before anything';
  if (!hasBackup(database)) return 'in the backup';
  return reading(database, migrationsIn).length === before.migrations.length
    ? 'in the migration'
    : 'after it';
}

const migrationsIn = (connection: Sqlite.Database) =>
  connection.prepare('SELECT name FROM migrations ORDER BY name').pluck().all() as string[];

export function standing(path: string): Standing {
  return reading(path, (connection) => ({
    migrations: migrationsIn(connection),
    schema: schemaOf(connection),
    rows: digestsOf(connection),
    damage: [
      ...(connection.pragma('integrity_check(3)') as { integrity_check: string }[])
        .map((one) => one.integrity_check)
        .filter((line) => line !== 'ok'),
      ...(connection.pragma('foreign_key_check') as unknown[]).map((row) => JSON.stringify(row)),
    ],
  }));
}
