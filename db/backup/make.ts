import { createHash } from 'node:crypto';
import {
  chmodSync,
  closeSync,
  createReadStream,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  statfsSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import Sqlite from 'better-sqlite3';
import { type BackupManifest, type BackupReason, backupName } from '@/lib/backups/manifest';
import { backupWords as words } from '@/lib/wording/backups';
import { proveCopy } from './prove';
import { manifestText } from './read';
import { sealFile } from './seal';

interface MakeBackup {
  /** The database, which may be in use. */
  database: string;
  folder: string;
  reason: BackupReason;
  now: string;
  /** The second place of the ledger's heads, as it was read before. */
  headsText: string;
  /** Public half of a key: what is kept is then sealed for whoever holds the other. */
  recipient: string | null;
}

/** Why no backup was made; in words for people. */
export class NoBackup extends Error {}

/**
 * Makes a backup while the database is in use, proves it, and only then gives it its name. It is one moment of the database:
 * all that was acknowledged by then, and nothing half done. A copy that is not proven is kept, and its description says so.
 *
 * Throws `NoBackup` where there is no database or no room for it.
 */
export async function makeBackup(request: MakeBackup): Promise<BackupManifest> {
  const { database, folder, reason, now, headsText, recipient } = request;
  if (!existsSync(database)) throw new NoBackup(words.noDatabase(database));
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  for (const place of [folder, dirname(database)]) removeAbandoned(place);
  requireRoom(database, folder, recipient === null ? 1 : 2);
  const name = freeName(folder, backupName(now, reason));
  // what is to be sealed never lies open where the backups are
  const copy = recipient === null ? join(folder, `.${name}.unfinished`) : `${database}.${name}.unfinished`;
  const sealed = join(folder, `.${name}.sealed-unfinished`);
  try {
    copyInto(database, copy);
    const proof = proveCopy({ path: copy, now, headsText, areHeadsLookedFor: false });
    const isSealed = recipient !== null;
    if (isSealed) await sealFile(copy, sealed, recipient);
    const made = isSealed ? sealed : copy;
    chmodSync(made, 0o600);
    const file = `${name}.sqlite${isSealed ? '.age' : ''}`;
    const manifest: BackupManifest = {
      format: 'kitwright-backup-1',
      file,
      reason,
      madeAt: now,
      bytes: statSync(made).size,
      sha256: await sha256OfFile(made),
      isSealed,
      proof,
    };
    // the description is there first: a backup without one is taken for what a crash left
    writeDurably(join(folder, `${file}.json`), manifestText(manifest));
    syncFile(made);
    renameSync(made, join(folder, file));
    syncFile(folder);
    return manifest;
  } finally {
    for (const path of [copy, `${copy}-journal`, sealed]) rmSync(path, { force: true });
  }
}

/** One moment of the database in a file of its own. Writers go on meanwhile: it only reads. */
function copyInto(database: string, copy: string): void {
  rmSync(copy, { force: true });
  const connection = new Sqlite(database, { readonly: true, fileMustExist: true });
  try {
    connection.pragma('busy_timeout = 5000');
    connection.prepare('VACUUM INTO ?').run(copy);
  } finally {
    connection.close();
  }
}

const ABANDONED_MS = 3_600_000;

/** What a backup left that was killed: each would be as large as the database. One under way is written to all the time. */
function removeAbandoned(folder: string): void {
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (!/\.?kitwright-\d{8}T\d{6}Z-\w+(-\d+)?\.(sealed-)?unfinished(-journal)?$/.test(name)) continue;
    if (Date.now() - statSync(path).mtimeMs > ABANDONED_MS) rmSync(path, { force: true });
  }
}

function requireRoom(database: string, folder: string, copies: number): void {
  const wal = `${database}-wal`;
  const needs =
    (statSync(database).size + (existsSync(wal) ? statSync(wal).size : 0)) * copies * 1.05 + 10_000_000;
  const { bavail, bsize } = statfsSync(folder);
  if (bavail * bsize < needs) throw new NoBackup(words.noRoom(folder, needs, bavail * bsize));
}

function freeName(folder: string, name: string): string {
  for (let again = 1; ; again += 1) {
    const tried = again === 1 ? name : `${name}-${again}`;
    const isTaken = ['.sqlite', '.sqlite.age'].some((end) => existsSync(join(folder, `${tried}${end}`)));
    if (!isTaken) return tried;
  }
}

export async function sha256OfFile(path: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(path), hash);
  return hash.digest('hex');
}

/** Written beside and then put under its name, so that no half of it is ever read. */
function writeDurably(path: string, text: string): void {
  const unfinished = `${path}.unfinished`;
  writeFileSync(unfinished, text, { mode: 0o600 });
  syncFile(unfinished);
  renameSync(unfinished, path);
}

export function syncFile(path: string): void {
  const file = openSync(path, 'r');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
