/**
 * Puts the demo hospital, as of now, in place of the demo in the database named by KITWRIGHT_DB.
 *
 * A new demo is made in a file beside it and then copied over the old one by SQLite's own backup, which is one
 * transaction on the old file: a server that has it open sees the old demo or the new one, never a mixture, and
 * a crash leaves the old one. So it is safe, and allowed, while the server runs.
 */
import { existsSync, renameSync, rmSync } from 'node:fs';
import { relative } from 'node:path';
import Sqlite from 'better-sqlite3';
import { openDatabase } from '@/db/client';
import { headsPath } from '@/db/ledgerHeadsFile';
import { migrate } from '@/db/migrate';
import { isDemo, isEmpty, loadDemo } from '@/seed/load';

const path = process.env.KITWRIGHT_DB;
if (!path) throw new Error('KITWRIGHT_DB must name the database file.');
const inside = relative(process.cwd(), path);
const shown = inside.startsWith('..') ? path : inside;

const refusal = await reasonToRefuse(path);
if (refusal) {
  console.error(`refused: ${refusal}`);
  process.exit(1);
}
const fresh = `${path}.fresh-${process.pid}`;
try {
  migrate(fresh);
  const db = openDatabase(fresh);
  await loadDemo({ db, now: new Date() });
  db.close();
  const source = new Sqlite(fresh);
  // one step for all pages: the old file is locked once, briefly
  await source.backup(path, { progress: () => Number.MAX_SAFE_INTEGER });
  source.close();
  setHeadsAside(headsPath(path, process.env.KITWRIGHT_HEADS));
} finally {
  for (const end of ['', '-wal', '-shm']) rmSync(fresh + end, { force: true });
}
process.stdout.write(`The demo hospital in ${shown} is as new`);

/** Null when what is there now may be replaced. */
async function reasonToRefuse(databasePath: string): Promise<string | null> {
  if (!existsSync(databasePath)) {
    return `There is no database at ${shown} to reset: npm start makes one with the demo in it.`;
  }
  migrate(databasePath);
  const db = openDatabase(databasePath);
  try {
    if ((await isEmpty(db)) || (await isDemo(db))) return null;
    return `The database ${shown} holds a hospital's own data, not the demo, so it is not reset: set KITWRIGHT_DB to the demo's file.`;
  } finally {
    db.close();
  }
}

/** The heads of the old demo's ledger say nothing of the new one; they are kept under another name. */
function setHeadsAside(place: string): void {
  if (existsSync(place)) renameSync(place, `${place}.until-${new Date().toISOString().replaceAll(':', '-')}`);
}
