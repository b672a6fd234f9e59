/**
 * Brings the database named by KITWRIGHT_DB to the present schema and fills an empty one with the demo hospital, or, with
 * KITWRIGHT_DEMO=no, with the starter rules alone. Prints one line that says what is there now, and where there is no
 * administrator a second one with the code that names the first: it is printed here and nowhere kept.
 */
import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { makeBackup, NoBackup } from '@/db/backup/make';
import { type Database, openDatabase } from '@/db/client';
import { migrate, migrationsOf } from '@/db/migrate';
import { settleConfigurations } from '@/db/operations/configurations/settle-due';
import { offerFirstRun } from '@/db/operations/people/offer-first-run';
import { newOneTimeCode } from '@/db/secrets';
import { isProven } from '@/lib/backups/manifest';
import { backupSettings, configurationProblems } from '@/lib/running/configuration';
import { backupWords as words } from '@/lib/wording/backups';
import { isDemo, isEmpty, loadDemo } from '@/seed/load';
import { insertStarterRules } from '@/seed/rules/insertStarterRules';
import { placesOf, shown, textOf } from './kitwright/places';

const path = process.env.KITWRIGHT_DB;
if (!path) throw new Error('KITWRIGHT_DB must name the database file.');
const wrong = configurationProblems(process.env);
if (wrong.length > 0) {
  console.error(`refused: ${wrong.map(({ message }) => message).join(' ')}`);
  process.exit(1);
}
mkdirSync(dirname(path), { recursive: true });
if (existsSync(path)) await keepBeforeMigrating(path);
process.stdout.write(existsSync(path) ? await bringUpToDate(path) : await makeNew(path));

/** What a migration would change is kept first, in a proven copy; without one nothing is changed. */
async function keepBeforeMigrating(database: string): Promise<void> {
  if (!holdsAnOlderSchema(database)) return;
  const { backups, heads } = placesOf(process.env);
  try {
    const manifest = await makeBackup({
      database,
      folder: backups,
      reason: 'beforeMigration',
      now: new Date().toISOString(),
      headsText: textOf(heads),
      recipient: backupSettings(process.env).recipient,
    });
    if (isProven(manifest)) return;
    console.error(`refused: ${words.notMigrated(shown(database), manifest.proof.faults)}`);
  } catch (error) {
    if (!(error instanceof NoBackup)) throw error;
    console.error(`refused: ${words.notMigrated(shown(database), [error.message])}`);
  }
  process.exit(1);
}

/** One of the present schema needs no copy, nor does one that migrating refuses. */
function holdsAnOlderSchema(database: string): boolean {
  try {
    const { recorded, missing, unknown, changed } = migrationsOf(database);
    return recorded.length > 0 && missing.length > 0 && unknown.length + changed.length === 0;
  } catch {
    // no database of ours: `migrate` says what it is
    return false;
  }
}

/** A new database appears under its name only when it is complete: a crash half-way leaves no half demo. */
async function makeNew(finalPath: string): Promise<string> {
  const unfinished = `${finalPath}.unfinished`;
  for (const end of ['', '-wal', '-shm']) rmSync(unfinished + end, { force: true });
  const outcome = await bringUpToDate(unfinished);
  renameSync(unfinished, finalPath);
  return outcome;
}

async function bringUpToDate(databasePath: string): Promise<string> {
  migrate(databasePath);
  const db = openDatabase(databasePath);
  try {
    const holds = await fill(db);
    const code = newOneTimeCode();
    const offered = await offerFirstRun({ db, now: new Date().toISOString(), code });
    return offered ? `${holds}\nfirst administrator: ${code}` : holds;
  } finally {
    db.close();
  }
}

async function fill(db: Database): Promise<string> {
  if (!(await isEmpty(db))) {
    await settleConfigurations({ db, now: new Date().toISOString() });
    return (await isDemo(db)) ? 'demo hospital' : 'hospital data';
  }
  if (process.env.KITWRIGHT_DEMO === 'no') {
    await db.tx((write) => insertStarterRules(write));
    return 'a new hospital without a catalogue';
  }
  await loadDemo({ db, now: new Date() });
  return 'demo hospital, loaded now';
}
