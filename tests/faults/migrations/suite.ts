import { type ChildProcess, spawn } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { migrate } from '@/db/migrate';
import { ROOT } from '../../../scripts/bootstrap/places.mjs';
import { random } from '../random';
import { scratchFolder } from '../scratch';
import { digestsOf, reading, schemaOf } from '../standing';
import type { Found, Suite } from '../suite';
import { migrationFaults, type Standing } from './checker';
import { olderHospital, released } from './olderHospital';

/**
 * Migrations killed midway, from the schema of every release: a database of that release with the demo's rows is brought up to
 * date by the program that does it at each start, which first makes and proves a backup. It is killed by SIGKILL at a moment
 * drawn from the time it takes, and started again. What the kill left must be the old database, untouched, or the new one;
 * and the next start must come to the schema of a new database and the rows of one whose migration nobody killed.
 */
export const migrations: Suite = {
  unit: 'kills',
  size: 104,
  run: ({ size, seed, template, say }) =>
    killMigrations({
      kills: size,
      from: released()
        .map((_, at) => at + 1)
        .slice(0, -1),
      seed,
      template,
      say,
    }),
};

interface KillMigrations {
  kills: number;
  /** By how many migrations each older release is known. The kills go round them. */
  from: readonly number[];
  seed: number;
  template: string;
  say(line: string): void;
}

type Moment = 'before anything' | 'in the backup' | 'in the migration' | 'after it';

export async function killMigrations({ kills, from, seed, template, say }: KillMigrations): Promise<Found> {
  const draw = random(seed);
  const folder = mkdtempSync(join(scratchFolder(), 'migrations-'));
  const moments: Record<Moment, number> = {
    'before anything': 0,
    'in the backup': 0,
    'in the migration': 0,
    'after it': 0,
  };
  const faults: string[] = [];
  let tried = 0;
  let rows = 0;
  try {
    const fresh = freshSchema(join(folder, 'fresh.sqlite'));
    for (const [at, count] of from.entries()) {
      const here = Math.floor(((at + 1) * kills) / from.length) - Math.floor((at * kills) / from.length);
      if (here === 0) continue;
      const older = join(folder, 'older.sqlite');
      clear(older);
      rows += olderHospital(older, count, { demo: template, scratch: folder }).rows;
      const before = standing(older);
      const { unharmed, ofTheMoment, parts } = await bringUnharmed(folder, older);
      for (let kill = 0; kill < here; kill += 1) {
        const database = await place(folder, older);
        const moment = await killWithin(database, before, parts, { number: tried, draw });
        moments[moment] += 1;
        const left = standing(database);
        await start(database).ended;
        const after = standing(database);
        tried += 1;
        const found = migrationFaults({
          before,
          left,
          after,
          unharmed,
          fresh,
          ofTheMoment,
          litter: litterOf(database),
        });
        for (const fault of found) faults.push(`from ${released()[count - 1]}, killed ${moment}: ${fault}`);
      }
      say(`from ${released()[count - 1]}: ${here} kills`);
    }
    const seen = Object.entries(moments).map(([moment, count]) => `${count} ${moment}`);
    return {
      tried,
      acknowledged: null,
      lost: null,
      seen: [
        `killed ${seen.join(', ')}; from ${Math.min(kills, from.length)} releases with ${rows.toLocaleString('en-GB')} rows in all`,
      ],
      faults:
        moments['in the backup'] + moments['in the migration'] === 0
          ? [...faults, 'no kill fell into backup or migration']
          : faults,
      notTried: [],
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function freshSchema(path: string): string[] {
  migrate(path);
  return reading(path, schemaOf);
}

const clear = (path: string) => {
  for (const end of ['', '-wal', '-shm', '-journal']) rmSync(path + end, { force: true });
};

/** A copy in a folder of its own, with a place for its backups. */
async function place(folder: string, older: string): Promise<string> {
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

function start(database: string): Started {
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
async function bringUnharmed(folder: string, older: string) {
  const alone = await place(folder, older);
  migrate(alone);
  const migrated = standing(alone);
  const database = await place(folder, older);
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
async function killWithin(
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

const migrationsIn = (connection: import('better-sqlite3').Database) =>
  connection.prepare('SELECT name FROM migrations ORDER BY name').pluck().all() as string[];

function standing(path: string): Standing {
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

/** What lies beside the database after the next start that is neither it nor a backup with its description. */
function litterOf(database: string): string[] {
  const here = readdirSync(dirname(database)).filter(
    (name) => !['', '-wal', '-shm'].some((end) => name === basename(database) + end) && name !== 'backups',
  );
  return here;
}
