/**
 * Brings the database named by KITWRIGHT_DB to the present schema and fills an empty one with the demo hospital.
 * Prints one line that says what is there now.
 */
import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { openDatabase } from '@/db/client';
import { migrate } from '@/db/migrate';
import { settleConfigurations } from '@/db/operations/configurations/settle-due';
import { isDemo, isEmpty, loadDemo } from '@/seed/load';

const path = process.env.KITWRIGHT_DB;
if (!path) throw new Error('KITWRIGHT_DB must name the database file.');
mkdirSync(dirname(path), { recursive: true });
process.stdout.write(existsSync(path) ? await bringUpToDate(path) : await makeNew(path));

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
    if (!(await isEmpty(db))) {
      await settleConfigurations({ db, now: new Date().toISOString() });
      return (await isDemo(db)) ? 'demo hospital' : 'hospital data';
    }
    await loadDemo({ db, now: new Date() });
    return 'demo hospital, loaded now';
  } finally {
    db.close();
  }
}
